/**
 * The panel's page: set once, filled by messages. It may load its own script and style, and nothing else.
 */
export interface PageParts {
  /** Where VS Code serves this panel's files from. */
  cspSource: string;
  /** A word that only this page knows, so that no other script runs in it. */
  nonce: string;
  script: string;
  style: string;
}

/** The page's HTML. Nothing of the maker's text is in it. */
export function panelPage({ cspSource, nonce, script, style }: PageParts): string {
  const policy = [
    "default-src 'none'",
    `style-src ${cspSource}`,
    `script-src 'nonce-${nonce}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="${style}">
<title>Drawing</title>
</head>
<body>
<main id="sheet" tabindex="0" aria-label="Drawing: arrow keys move it, plus and minus change its size"></main>
<p id="named" aria-hidden="true"></p>
<section id="rules" aria-label="Values to try" hidden></section>
<footer>
<p id="state" role="status" aria-live="polite">Waiting for the first drawing.</p>
<div id="looks" role="toolbar" aria-label="What to show">
<details id="parts"><summary>Parts</summary><ul aria-label="Parts of the chair"></ul></details>
<button data-look="all" title="All views (0)">All</button>
<button data-look="front" title="Front view (1)">Front</button>
<button data-look="side" title="Side view (2)">Side</button>
<button data-look="plan" title="Plan (3)">Plan</button>
</div>
</footer>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}
