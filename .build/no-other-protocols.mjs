/**
 * Stands in for what the protocol's library has for notebooks, for finding modules on disk, for keeping documents and for requests that the
 * server does not answer: nothing here asks for any of them.
 */
const nothingMore = (/** @type {unknown} */ base) => base;

export const NotebookSyncFeature = nothingMore;
export const CallHierarchyFeature = nothingMore;
export const TypeHierarchyFeature = nothingMore;
export const InlineValueFeature = nothingMore;
export const MonikerFeature = nothingMore;
export const LinkedEditingRangeFeature = nothingMore;
export const InlineCompletionFeature = nothingMore;
export const TextDocumentContentFeature = nothingMore;
// Requests are answered by their methods, without the library's own handlers for these.
export const SemanticTokensFeature = nothingMore;
export const InlayHintFeature = nothingMore;
export const FoldingRangeFeature = nothingMore;
export const DiagnosticFeature = nothingMore;
export const FileOperationsFeature = nothingMore;
