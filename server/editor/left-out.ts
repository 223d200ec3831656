/**
 * Methods of the protocol that the server does not answer, each with the reason.
 */
export const leftOut: Readonly<Record<string, string>> = {
  "workspace/diagnostic":
    "The command line checks many files at once; in the editor the open ones are what matters.",
  "completionItem/resolve":
    "Completions carry their documentation: it comes from the vocabulary table and costs nothing.",
  "textDocument/signatureHelp": "Functions take one or two values; hover and completion say which.",
  "textDocument/declaration": "A thing is declared where it is defined: definition answers.",
  "textDocument/typeDefinition": "Things have no types of their own to go to.",
  "textDocument/implementation": "There is nothing abstract to implement.",
  "textDocument/semanticTokens/full/delta": "A whole file's tokens are few enough to send again.",
  "textDocument/linkedEditingRange": "Rename does it, and is refused where it might miss a mention.",
  "textDocument/documentColor": "The language has no colours.",
  "textDocument/colorPresentation": "The language has no colours.",
  "textDocument/moniker": "Nothing outside a workspace speaks of a chair's parts.",
  "textDocument/inlineValue": "Nothing is debugged; inlay hints show what values come to.",
  "textDocument/inlineCompletion": "A chair is the maker's to decide.",
  "textDocument/prepareCallHierarchy": "Nothing calls anything.",
  "callHierarchy/incomingCalls": "Nothing calls anything.",
  "callHierarchy/outgoingCalls": "Nothing calls anything.",
  "textDocument/prepareTypeHierarchy": "There are no types above types.",
  "typeHierarchy/supertypes": "There are no types above types.",
  "typeHierarchy/subtypes": "There are no types above types.",
  "codeAction/resolve": "Fixes carry their edits.",
  "codeLens/resolve": "Lenses carry their titles.",
  "documentLink/resolve": "Links carry their targets.",
  "inlayHint/resolve": "Hints carry their tooltips.",
  "workspaceSymbol/resolve": "Symbols carry their places.",
  "workspace/executeCommand": "Every mend is an edit; the server does nothing behind the editor's back.",
  "workspace/willRenameFiles":
    "Paths in `use` and `like` are the maker's; a file not found is told with its line.",
  "workspace/willCreateFiles": "A new file changes nothing until another names it.",
  "workspace/willDeleteFiles": "A file that others name and that is gone is told on their lines.",
  "workspace/textDocumentContent": "There are no documents that only the server knows.",
  "textDocument/willSaveWaitUntil": "Editors format and fix on save by themselves when asked to.",
  "notebookDocument/sync": "Chairs are not written in notebooks.",
};
