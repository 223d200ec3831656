/**
 * Stands in for the parser library's checks of words and of a grammar, which it is told to leave out (`skipValidations`): neither changes while
 * it runs.
 */
const none = () => [];

export const validateGrammar = none;
export const validateLookahead = none;
export const validateRuleIsOverridden = none;
export const validateAmbiguousAlternationAlternatives = none;
export const validateEmptyOrAlternative = none;
export const validateNoLeftRecursion = none;
export const validateSomeNonEmptyLookaheadPath = none;

export const performRuntimeChecks = none;
export const performWarningRuntimeChecks = none;
export const validatePatterns = none;
