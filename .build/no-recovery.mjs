/**
 * Stands in for the parser library's recovery from errors, which it is told to leave alone (`recoveryEnabled`): each line is mended before it is read.
 */
export const IN_RULE_RECOVERY_EXCEPTION = "InRuleRecoveryException";

export class Recoverable {
  recoveryEnabled = false;
  firstAfterRepMap = {};
  resyncFollows = {};

  initRecoverable() {
    this.recoveryEnabled = false;
    this.firstAfterRepMap = {};
    this.resyncFollows = {};
  }

  /** Asked at the end of each repetition. */
  attemptInRepetitionRecovery() {}
}

/** What may follow each rule, which only recovery asks. */
export const computeAllProdsFollows = () => ({});
