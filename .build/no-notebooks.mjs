/**
 * Stands in for what the protocol's library has for notebooks and for finding modules on disk: nothing here has cells or asks for either.
 */
export const NotebookSyncFeature = (/** @type {unknown} */ base) => base;
