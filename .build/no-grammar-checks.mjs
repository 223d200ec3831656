/**
 * Stands in for the parser library's checks of a grammar, which it is told to leave out (`skipValidations`): the grammar does not change while
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
