/**
 * Stands in for what the protocol's library has for notebooks, for finding modules on disk and for requests that the
 * server does not answer: nothing here asks for any of them.
 */
export const NotebookSyncFeature = (/** @type {unknown} */ base) => base;
