/**
 * The panel's page: set once, filled by messages. It may load its own script and style, and nothing else. What it can be asked to do
 * stands in VS Code's own title bar above it and in the palette, and is done by keys on it.
 */
interface PageParts {
  /** Where VS Code serves this panel's files from. */
  cspSource: string;
  /** A word that only this page knows, so that no other script runs in it. */
  nonce: string;
  script: string;
  /** The part of the script that turns the chair; loaded when that is asked for. */
  pictorial: string;
  /** The parts that show the boards and the frame at work; the same. */
  boards: string;
  strength: string;
  style: string;
}

/** The page's HTML. Nothing of the maker's text is in it. */
export function panelPage({
  cspSource,
  nonce,
  script,
  pictorial,
  boards,
  strength,
  style,
}: PageParts): string {
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
<main>
<div id="sheet" tabindex="0" role="application" aria-roledescription="drawing" aria-label="Drawing" aria-describedby="keys"><div id="pictorial" tabindex="0" role="application" aria-roledescription="pictorial view" aria-label="Pictorial view" aria-describedby="keys" hidden></div></div>
<p id="keys" class="offscreen">${keys}</p>
<p id="state">Waiting for the first drawing.</p>
<div id="told" hidden></div>
<section id="words" aria-label="The drawing in words" tabindex="-1" hidden></section>
</main>
<section id="turning" aria-label="Pictorial view" hidden></section>
<section id="compare" aria-label="What differs" hidden></section>
<section id="post" aria-label="A post from each face" hidden></section>
<section id="strength" aria-label="Strength" hidden></section>
<section id="boards" aria-label="Boards" tabindex="0" hidden></section>
<section id="rules" aria-label="Values to try" hidden></section>
<p id="said" class="offscreen" role="status"></p>
<script nonce="${nonce}" src="${script}" data-pictorial="${pictorial}" data-boards="${boards}" data-strength="${strength}"></script>
</body>
</html>`;
}

const keys =
  "Arrow keys move the drawing, plus and minus change its size, 0 shows all, 1 to 3 one view, 4 the pictorial view, in which arrow keys turn the chair by 15°, with Shift by 5°, and 0 turns it back. N and P go from part to part and tell " +
  "of each; Enter goes to its text. W opens all of it in words, Escape closes them.";
