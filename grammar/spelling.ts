import { lineEnd } from "./lines.ts";
import { spellOut } from "./numbers.ts";
import type { Problem, Span } from "./problem.ts";
import { fix, replaceFix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import { finish, type Steps } from "./steps.ts";
import { endOf, lex, makeToken, retag, spanOf, T, type Token } from "./tokens.ts";
import { isUnit, respelt, unitNames } from "./units.ts";

/** How deep parentheses may stand in one another; a maker needs three. */
const deepest = 40;

/**
 * Normalises the tokens of a text: tells units apart from words, takes apart what was written without spaces, understands
 * foreign spellings (with a problem that offers ours), and makes sure that parentheses pair up within a line. What is left over becomes
 * error tokens, so that every sequence of tokens this returns is grammatical. Ends with an empty Newline token.
 */
export const normalise = (text: string, tokens: readonly Token[]): Normalised =>
  finish(normaliseSteps(text, tokens));

interface Normalised {
  tokens: Token[];
  problems: Problem[];
}

/** Tokens between two rests. */
const BATCH = 4000;

/** The same, resting now and then. */
export function* normaliseSteps(text: string, tokens: readonly Token[]): Steps<Normalised> {
  const problems: Problem[] = [];
  const out: Token[] = [];
  const parens = pairing(problems);
  for (let at = 0; at < tokens.length; at++) {
    if (at % BATCH === BATCH - 1) yield;
    const token = tokens[at]!;
    const type = token.tokenType;
    if (beginsComment(text, token, tokens[at + 1])) {
      strokeComment(text, token, problems);
      while (tokens[at + 1] && tokens[at + 1]!.tokenType !== T.Newline) at++;
      continue;
    }
    if (type === T.Word) readWord(token, out, problems);
    else if (type === T.Number) readDigits(text, token, out, problems);
    else if (type === T.LeftParen) parens.open(token, out);
    else if (type === T.RightParen) parens.close(token, out);
    else if (type === T.Newline || type === T.Semicolon || type === T.Open || type === T.Close) {
      parens.endLine();
      out.push(token);
    } else if (type === T.Minus || type === T.Comma || type === T.Text || type === T.Day) {
      if (type === T.Minus && token.image !== "-") foreignSign(token, "-", problems);
      out.push(token);
    } else readOther(text, token, tokens[at + 1], out, problems);
  }
  parens.endLine();
  out.push(makeToken(T.Newline, "", text.length));
  return { tokens: out, problems };
}

/** `//`, as other languages begin a comment; between figures it may be a fraction gone wrong. */
const beginsComment = (text: string, token: Token, next: Token | undefined): boolean =>
  token.tokenType === T.Slash &&
  next?.tokenType === T.Slash &&
  next.startOffset === endOf(token) &&
  !/[\w)]/.test(text[token.startOffset - 1] ?? " ");

function strokeComment(text: string, token: Token, problems: Problem[]): void {
  const { start } = spanOf(token);
  const end = lineEnd(text, start);
  problems.push(
    say("sign-spelling", { start, end: start + 2 }, sentence("sign-spelling.comment"), [
      fix(sentence("fix.begin-comment"), [{ start, end, text: `#${text.slice(start + 2, end)}` }], true),
    ]),
  );
}

function readWord(token: Token, out: Token[], problems: Problem[]): void {
  const before = out.at(-1);
  if (before !== undefined && isNumeric(before)) {
    const touching = endOf(before) === token.startOffset;
    if (isUnit(token.image)) {
      out.push(retag(token, T.Unit));
      return;
    }
    if (token.image === "of") {
      out.push(retag(token, T.Of));
      return;
    }
    const ours = respelt(token.image);
    if (ours !== undefined && (touching || token.image.length > 3)) {
      if (touching || token.image !== "feet") {
        unitSpelling(token, ours, problems);
        out.push(retag(token, T.Unit));
        return;
      }
    }
    if (touching) {
      takeApart(before, token, out, problems);
      return;
    }
  }
  if (before !== undefined && token.image === "of" && takesOf(before)) {
    out.push(retag(token, T.Of));
    return;
  }
  const glued = /^x(\d.*)$/.exec(token.image);
  if (glued !== null && before !== undefined && (isNumeric(before) || before.tokenType === T.Unit)) {
    out.push(makeToken(T.Word, "x", token.startOffset));
    again(glued[1]!, token.startOffset + 1, out, problems);
    problems.push(
      say("missing-space", spanOf(token), sentence("missing-space.sizes"), [
        replaceFix({ start: endOf(before), end: token.startOffset + 1 }, " x ", true),
      ]),
    );
    return;
  }
  if (token.image.includes("_")) {
    const name = token.image.replace(/_+$/, "").replace(/_+/g, "-");
    problems.push(
      say("unreadable", spanOf(token), sentence("sign-spelling.name", { name }), [
        replaceFix(spanOf(token), name, true),
      ]),
    );
  }
  out.push(token);
}

/** `40x40mm`, `12mm-3`, `5furlongs`: a word that touches the number before it and is not a unit. */
function takeApart(number: Token, word: Token, out: Token[], problems: Problem[]): void {
  const image = word.image;
  const whole = { start: number.startOffset, end: endOf(word) };
  const times = /^([a-zA-Z]*?)x(\d.*)?$/.exec(image);
  if (times !== null && (times[1] === "" || isUnit(times[1]!))) {
    const unit = times[1]!;
    const x = word.startOffset + unit.length;
    if (unit !== "") out.push(makeToken(T.Unit, unit, word.startOffset));
    out.push(makeToken(T.Word, "x", x));
    const rest = times[2] ?? "";
    if (rest !== "") again(rest, x + 1, out, problems);
    const second = /^(\d+(?:\.\d+)?)(.*)$/.exec(rest);
    const tail = second !== null && isUnit(second[2]!) ? second[2]! : "";
    const first = `${number.image}${unit === "" ? tail : unit}`;
    const spaced = rest === "" ? `${number.image}${unit} x ` : `${first} x ${rest}`;
    const message =
      tail !== "" && unit === ""
        ? sentence("missing-space.x-units", { spaced })
        : sentence("missing-space.x");
    problems.push(
      say("missing-space", whole, message, [replaceFix(whole, spaced, first === `${number.image}${unit}`)]),
    );
    return;
  }
  const minus = /^([a-zA-Z]+)-(.+)$/.exec(image);
  if (minus !== null && (isUnit(minus[1]!) || respelt(minus[1]!) !== undefined)) {
    const unit = minus[1]!;
    const sign = word.startOffset + unit.length;
    out.push(makeToken(T.Unit, unit, word.startOffset), makeToken(T.Minus, "-", sign));
    again(minus[2]!, sign + 1, out, problems);
    return; // the minus itself is reported where its spaces are looked at
  }
  const near = unitNames.find((unit) => unit.toLowerCase() === image.toLowerCase());
  problems.push(
    say(
      "unit-spelling",
      spanOf(word),
      sentence("unit-spelling.not-a-unit", { unit: image }),
      near === undefined ? [] : [replaceFix(spanOf(word), near, true)],
    ),
  );
  out.push(near === undefined ? retag(word, T.Error) : retag(word, T.Unit));
}

/** Reads a piece of a token over again as tokens of its own. */
function again(piece: string, offset: number, out: Token[], problems: Problem[]): void {
  for (const token of lex(piece).tokens) {
    token.startOffset += offset;
    if (token.tokenType === T.Word) readWord(token, out, problems);
    else out.push(token);
  }
}

function readDigits(text: string, token: Token, out: Token[], problems: Problem[]): void {
  const before = out.at(-1);
  const touching = before !== undefined && endOf(before) === token.startOffset;
  if (touching && before.tokenType === T.Error && before.image === ".") {
    out.pop();
    const at = { start: before.startOffset, end: endOf(token) };
    problems.push(
      say("number-spelling", at, sentence("number-spelling.zero", { number: token.image }), [
        replaceFix(at, `0.${token.image}`, true),
      ]),
    );
    out.push(makeToken(T.Number, `.${token.image}`, before.startOffset));
    return;
  }
  if (touching && before.tokenType === T.Comma && decimalComma(text, token, out, problems)) return;
  if (touching && before.tokenType === T.Slash) {
    const above = out.at(-2);
    if (above?.tokenType === T.Number && above.image.includes("/") && endOf(above) === before.startOffset) {
      const at = { start: above.startOffset, end: endOf(token) };
      if (/^\d{1,2}\/\d{1,2}\/\d{4}$/.test(text.slice(at.start, at.end))) {
        problems.push(say("date-spelling", at, sentence("date-spelling")));
        out.push(token);
        return;
      }
      problems.push(
        say("fraction-spelling", at, sentence("fraction-spelling.strokes"), [
          replaceFix(at, `${above.image} / ${token.image}`),
        ]),
      );
    }
  }
  out.push(token);
}

/** `6,5deg`: joined to one number when that is what it must mean; reported either way. */
function decimalComma(text: string, token: Token, out: Token[], problems: Problem[]): boolean {
  const whole = out.at(-2);
  if (whole?.tokenType !== T.Number || endOf(whole) !== token.startOffset - 1) return false;
  const at = { start: whole.startOffset, end: endOf(token) };
  const point = `${whole.image}.${token.image}`;
  problems.push(
    say(
      "number-spelling",
      at,
      sentence("number-spelling.comma", { point, whole: whole.image, part: token.image }),
      [replaceFix(at, point), replaceFix(at, `${whole.image}, ${token.image}`)],
    ),
  );
  const lists =
    token.image.length > 2 || text[endOf(token)] === "," || !/^\d+$/.test(`${whole.image}${token.image}`);
  if (lists) return false;
  out.splice(-2, 2, makeToken(T.Number, point, whole.startOffset));
  return true;
}

function readOther(
  text: string,
  token: Token,
  next: Token | undefined,
  out: Token[],
  problems: Problem[],
): void {
  const at = spanOf(token);
  const before = out.at(-1);
  switch (token.tokenType) {
    case T.InchMark: {
      const digits = token.image.slice(0, -1);
      const mark = makeToken(T.Unit, token.image.slice(-1), at.end - 1);
      out.push(makeToken(T.Number, digits, at.start), mark);
      const unit = respelt(mark.image) ?? "in";
      problems.push(
        say(
          "unit-spelling",
          at,
          sentence(unit === "in" ? "unit-spelling.inches" : "unit-spelling.feet", { digits }),
          [replaceFix(spanOf(mark), unit, true)],
        ),
      );
      return;
    }
    case T.Vulgar: {
      const spelt = spellOut(token.image);
      problems.push(
        say("fraction-spelling", at, sentence("fraction-spelling.stroke", { fraction: spelt }), [
          replaceFix(at, spelt, true),
        ]),
      );
      out.push(token);
      return;
    }
    case T.Slope:
      out.push(token);
      return;
    case T.Percent:
    case T.Degree:
      if (before === undefined || !isNumeric(before)) break;
      if (token.tokenType === T.Degree) unitSpelling(token, "deg", problems);
      out.push(retag(token, T.Unit));
      return;
    case T.CurlyText: {
      const straight = `"${token.image.slice(1, -1)}"`;
      problems.push(say("quote-spelling", at, sentence("quote-spelling"), [replaceFix(at, straight, true)]));
      out.push(makeToken(T.Text, straight, at.start));
      return;
    }
    case T.Times:
      foreignSign(token, "x", problems);
      out.push(token);
      return;
    case T.Star:
      if (token.image !== "*") foreignSign(token, "*", problems);
      out.push(token);
      return;
    case T.Slash:
      if (token.image !== "/") foreignSign(token, "/", problems);
      out.push(token);
      return;
    case T.Compare:
      if (token.image === "\u2264") foreignSign(token, "<=", problems);
      if (token.image === "\u2265") foreignSign(token, ">=", problems);
      out.push(token);
      return;
    case T.Plus:
    case T.Equals:
      out.push(token);
      return;
    case T.Conflict:
      problems.push(say("conflict-marker", at, sentence("conflict-marker")));
      break;
    case T.Error:
      tellErrorTokens(text, token, next, problems);
      break;
  }
  out.push(retag(token, T.Error));
}

/** Waste that has a story of its own; any other is reported where it stands in its statement. */
function tellErrorTokens(text: string, token: Token, next: Token | undefined, problems: Problem[]): void {
  const at = spanOf(token);
  if (
    token.image === '"' ||
    token.image === "\u201C" ||
    token.image === "\u201E" ||
    token.image === "\u201D"
  ) {
    const line = /[^\r\n]*/.exec(text.slice(at.end))?.[0] ?? "";
    const end = at.end + line.trimEnd().length;
    problems.push(
      say("unclosed-quote", at, sentence("unclosed-quote"), [
        fix(sentence("fix.close-quote"), [
          { start: at.start, end: at.end, text: '"' },
          { start: end, end, text: '"' },
        ]),
      ]),
    );
  } else if (token.image === "." && !(next?.tokenType === T.Number && next.startOffset === at.end)) {
    problems.push(say("unreadable", at, sentence("missing-name.after-point")));
  }
}

function unitSpelling(token: Token, ours: string, problems: Problem[]): void {
  problems.push(
    say("unit-spelling", spanOf(token), sentence("sign-spelling.ours", { ours, sign: token.image }), [
      replaceFix(spanOf(token), ours, true),
    ]),
  );
}

function foreignSign(token: Token, ours: string, problems: Problem[]): void {
  problems.push(
    say("sign-spelling", spanOf(token), sentence("sign-spelling.ours", { ours, sign: token.image }), [
      replaceFix(spanOf(token), ours, true),
    ]),
  );
}

/** Pairs parentheses up within each line; those with no partner, and those too deep, become error tokens. */
function pairing(problems: Problem[]) {
  let open: { token: Token; kept: boolean }[] = [];
  let deep = false;
  return {
    open(token: Token, out: Token[]): void {
      const kept = open.length < deepest;
      if (!kept && !deep) {
        deep = true;
        problems.push(say("too-deep", spanOf(token), sentence("too-deep.parentheses", { deepest })));
      }
      open.push({ token, kept });
      out.push(kept ? token : retag(token, T.Error));
    },
    close(token: Token, out: Token[]): void {
      const partner = open.pop();
      if (partner === undefined) problems.push(lonely(token, sentence("missing-parenthesis.closes-nothing")));
      out.push(partner?.kept ? token : retag(token, T.Error));
    },
    endLine(): void {
      if (open.length === 0) return;
      const first = open[0]!.token;
      problems.push(lonely(first, sentence("missing-parenthesis.not-closed")));
      for (const { token } of open) retag(token, T.Error);
      open = [];
      deep = false;
    },
  };
}

function lonely(token: Token, message: string): Problem {
  const at: Span = spanOf(token);
  return say("missing-parenthesis", at, message);
}

/** Tokens after which a unit may stand. */
function isNumeric(token: Token): boolean {
  return token.tokenType === T.Number || token.tokenType === T.Vulgar;
}

/** Tokens after which `of` makes a share of something. */
function takesOf(token: Token): boolean {
  return token.tokenType === T.Unit || token.tokenType === T.RightParen;
}
