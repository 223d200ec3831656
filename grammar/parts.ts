import { readNumber } from "./numbers.ts";
import { type Chain, type Group, type Item, isChain, type Operand } from "./phrases.ts";
import type { Problem, Span } from "./problem.ts";
import { fix, replaceFix, say } from "./say.ts";
import { sentence } from "./sentences/sentence.ts";
import { endOf, spanOf, T, type Token } from "./tokens.ts";
import type { Compare, Part, Value, Word } from "./tree.ts";
import { unitOf } from "./units.ts";

/** What the reader of parts must know of the statement they belong to. */
export interface Setting {
  /** A word of the statement's shape, which is therefore never an operand: `foot out - 20`. */
  isMarker(word: string): boolean;
  isFunction(word: string): boolean;
  /** The nearest function to a word that is none, for the message. */
  nearFunction(word: string): string | undefined;
  /** True when a problem of spelling was already told in this stretch of text. */
  told(start: number, end: number): boolean;
}

export interface Reading {
  word?: Word;
  parts: Part[];
  problems: Problem[];
}

/** Operands that one expression may have; more would only be a slip, and would nest too deep to work out. */
const mostOperands = 200;

/** Where an item starts in the text. */
export function startOf(item: Item): number {
  if (!isChain(item)) return item.startOffset;
  const first = item.operands[0]!;
  return (first.minus[0] ?? first.number ?? first.word ?? first.group!.open).startOffset;
}

/** The word that an item begins with, if it does. */
export function leadingWord(item: Item | undefined): Token | undefined {
  if (item === undefined || !isChain(item)) return undefined;
  const first = item.operands[0];
  return first !== undefined && first.minus.length === 0 && first.of === undefined ? first.word : undefined;
}

/**
 * The parts of a statement from the items of its phrase. With `headless` the first word is a part like the others, not the
 * statement's own word.
 */
export function readParts(items: readonly Item[], setting: Setting, headless = false): Reading {
  const reading: Reading = { parts: [], problems: [] };
  items.forEach((item, index) => {
    if (!isChain(item)) {
      pushToken(item, reading);
      return;
    }
    const own = index === 0 && !headless && leadingWord(item) !== undefined;
    readChain(item, own, setting, reading);
  });
  return reading;
}

function pushToken(token: Token, { parts, problems }: Reading): void {
  const at = spanOf(token);
  switch (token.tokenType) {
    case T.Comma:
      parts.push({ is: "comma", ...at });
      return;
    case T.Text:
      parts.push({ is: "text", text: withoutEscapes(token.image), ...at });
      return;
    case T.Day:
      parts.push({ is: "date", text: readDay(token, problems), ...at });
      return;
    case T.Equals:
      parts.push({ is: "equals", ...at });
      return;
    case T.Compare: {
      const op = ({ "\u2264": "<=", "\u2265": ">=" }[token.image] ?? token.image) as Compare;
      parts.push({ is: "compare", op, ...at });
      return;
    }
    case T.Times:
      parts.push({ is: "times", ...at });
      return;
    default: {
      const before = parts.at(-1);
      if (before?.is === "error" && before.end === at.start) {
        before.text += token.image;
        before.end = at.end;
      } else parts.push({ is: "error", text: token.image, ...at });
    }
  }
}

/** Takes the escapes `\"` and `\\` out of a text in quotes. */
function withoutEscapes(image: string): string {
  const inner = image.slice(1, -1);
  return inner.includes("\\") ? inner.replace(/\\(["\\])/g, "$1") : inner;
}

function readDay(token: Token, problems: Problem[]): string {
  const [year = "", month = "", day = ""] = token.image.split("-");
  const padded = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  const date = new Date(`${padded}T00:00:00Z`);
  if (Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== padded) {
    problems.push(
      say("date-spelling", spanOf(token), sentence("date-spelling.no-day", { date: token.image })),
    );
  } else if (padded !== token.image) {
    problems.push(
      say("date-spelling", spanOf(token), sentence("date-spelling.two-digits", { date: padded }), [
        replaceFix(spanOf(token), padded, true),
      ]),
    );
  }
  return padded;
}

/** A run of operands that makes one value, as it is gathered. */
interface Run {
  values: Value[];
  signs: Token[];
  /** Set while the run is one bare word, which may turn out a name, a reference or a value. */
  bare?: Token;
}

/** Written out: this is made for each word of each line. */
const wordOf = (token: Token): Part => ({
  is: "word",
  text: token.image,
  start: token.startOffset,
  end: endOf(token),
});

/** A chain as it is read: what of it makes one value is gathered until a word or the end comes. */
interface Gathering {
  run: Run;
  setting: Setting;
  reading: Reading;
}

function readChain(chain: Chain, own: boolean, setting: Setting, reading: Reading): void {
  const gathering: Gathering = { run: { values: [], signs: [] }, setting, reading };
  for (let at = 0; at < chain.operands.length; at++) {
    const sign = at > 0 ? chain.signs[at - 1] : undefined;
    if (at >= mostOperands && sign !== undefined) {
      cutOff(sign, gathering);
      return;
    }
    takeOperand(chain.operands[at], sign, own && at === 0, gathering);
  }
  flush(gathering);
}

function cutOff(sign: Token, gathering: Gathering): void {
  flush(gathering);
  const { parts, problems } = gathering.reading;
  problems.push(say("too-deep", spanOf(sign), sentence("too-deep.operands", { most: mostOperands })));
  parts.push({ is: "error", text: sign.image, ...spanOf(sign) });
}

/** Ends the run: what was gathered is one part of the statement. */
function flush(gathering: Gathering): void {
  const { run, reading } = gathering;
  if (run.bare !== undefined) reading.parts.push(wordOf(run.bare));
  else if (run.values.length > 0) {
    const value = combine(run);
    reading.parts.push({ is: "value", value, start: value.start, end: value.end });
  }
  gathering.run = { values: [], signs: [] };
}

/** One operand with the sign before it; `heads` is set for that which may be the statement's own word. */
function takeOperand(
  operand: Operand | undefined,
  sign: Token | undefined,
  heads: boolean,
  gathering: Gathering,
): void {
  const { run, setting, reading } = gathering;
  const word = operand?.minus.length === 0 ? operand.word : undefined;
  if (operand !== undefined && word !== undefined && (heads || setting.isMarker(word.image))) {
    if (sign !== undefined) dangling(sign, run, reading);
    takeWord(operand, word, heads, gathering);
  } else if (operand === undefined) {
    if (sign !== undefined) dangling(sign, run, reading);
  } else if (sign !== undefined && run.values.length > 0) joinOn(operand, sign, gathering);
  else beginRun(withSign(operand, sign, reading), gathering);
}

/** The statement's own word, or one of its shape: never a value, though a group may follow it. */
function takeWord(operand: Operand, word: Token, heads: boolean, gathering: Gathering): void {
  flush(gathering);
  const { setting, reading, run } = gathering;
  if (heads) reading.word = { text: word.image, start: word.startOffset, end: endOf(word) };
  else reading.parts.push(wordOf(word));
  if (operand.group !== undefined)
    run.values.push(readOperand({ ...operand, word: undefined }, setting, reading.problems));
}

function joinOn(operand: Operand, sign: Token, { run, setting, reading: { problems } }: Gathering): void {
  const value = readOperand(operand, setting, problems);
  const before = run.values.at(-1);
  if (before && sign.tokenType === T.Minus) checkSpaces(before, sign, value, problems, operand.number?.image);
  run.signs.push(sign);
  run.values.push(value);
  run.bare = undefined;
}

/** The operand with a sign that has nothing before it: a minus is its own, any other is reported. */
function withSign(operand: Operand, sign: Token | undefined, reading: Reading): Operand {
  if (sign?.tokenType === T.Minus) return { ...operand, minus: [sign, ...operand.minus] };
  if (sign !== undefined) loneSign(sign, reading);
  return operand;
}

function beginRun(operand: Operand, gathering: Gathering): void {
  const { setting, reading } = gathering;
  const { minus, word, group, of } = operand;
  if (word !== undefined && group !== undefined && !isCall(operand, setting)) {
    gathering.run.values.push(readOperand({ minus, word }, setting, reading.problems));
    if (minus.length === 0) gathering.run.bare = word;
    flush(gathering);
    gathering.run.values.push(
      readOperand({ ...operand, minus: [], word: undefined }, setting, reading.problems),
    );
    return;
  }
  gathering.run.values.push(readOperand(operand, setting, reading.problems));
  if (word !== undefined && minus.length === 0 && group === undefined && !of) gathering.run.bare = word;
}

/** A word before parentheses is a function when it is known as one, or touches them. */
function isCall(operand: Operand, setting: Setting): boolean {
  const word = operand.word!;
  return setting.isFunction(word.image) || endOf(word) === operand.group!.open.startOffset;
}

/** A sign with nothing after it: the value before it cannot be what was meant. */
function dangling(sign: Token, run: Run, { parts, problems }: Reading): void {
  problems.push(
    say("missing-value", spanOf(sign), sentence("missing-value.after-sign", { sign: sign.image })),
  );
  if (run.values.length === 0) {
    parts.push({ is: "error", text: sign.image, ...spanOf(sign) });
    return;
  }
  run.signs.push(sign);
  run.values.push({ is: "unreadable", ...spanOf(sign) });
  run.bare = undefined;
}

/** `out + 20`: a sign where only a minus can stand. */
function loneSign(sign: Token, { parts, problems }: Reading): void {
  if (sign.tokenType === T.Plus) {
    const at = spanOf(sign);
    problems.push(
      say("sign-spelling", at, sentence("left-over.plus"), [replaceFix(at, "", true)].map(takeOut)),
    );
    return;
  }
  problems.push(
    say("missing-value", spanOf(sign), sentence("missing-value.before-sign", { sign: sign.image })),
  );
  parts.push({ is: "error", text: sign.image, ...spanOf(sign) });
}

const takeOut = <F extends { title: string }>(fix: F): F => ({
  ...fix,
  title: sentence("fix.take-sign-out"),
});

/** A minus that subtracts has spaces on both sides; `12mm-3` is one all the same, `a -b` may have lost a comma instead. */
function checkSpaces(left: Value, sign: Token, right: Value, problems: Problem[], figure = ""): void {
  const before = sign.startOffset > left.end;
  const after = right.start > endOf(sign);
  if (before && after) return;
  const at = { start: left.end, end: right.start };
  // `17-3/4`, as some write a whole number and its fraction.
  const mixed =
    !before && !after && left.is === "number" && Number.isInteger(left.number) && figure.includes("/");
  if (mixed) {
    const text = `${left.number} ${figure}`;
    problems.push(
      say("minus-spacing", spanOf(sign), sentence("minus-spacing.mixed", { text }), [
        fix(sentence("fix.write-plain", { text }), [{ ...at, text: " " }]),
        fix(sentence("fix.put-spaces-round"), [{ ...at, text: " - " }]),
      ]),
    );
    return;
  }
  problems.push(
    say("minus-spacing", spanOf(sign), sentence("minus-spacing"), [
      fix(sentence("fix.put-spaces-round"), [{ ...at, text: " - " }], !before || after),
    ]),
  );
}

const weight = (sign: Token): number => (sign.tokenType === T.Star || sign.tokenType === T.Slash ? 2 : 1);

/** Joins a run of operands to one value, products before sums, from the left. */
function combine({ values, signs }: Run): Value {
  if (signs.length === 0) return values[0]!;
  const sums: Value[] = [values[0]!];
  const sumSigns: Token[] = [];
  signs.forEach((sign, index) => {
    const right = values[index + 1]!;
    if (weight(sign) === 2) sums.push(join(sums.pop()!, sign, right));
    else {
      sums.push(right);
      sumSigns.push(sign);
    }
  });
  return sums.reduce((left, right, index) => join(left, sumSigns[index - 1]!, right));
}

function join(left: Value, sign: Token, right: Value): Value {
  const op =
    sign.tokenType === T.Plus
      ? "+"
      : sign.tokenType === T.Minus
        ? "-"
        : sign.tokenType === T.Star
          ? "*"
          : "/";
  return { is: "binary", op, left, right, start: left.start, end: Math.max(right.end, endOf(sign)) };
}

function readOperand(operand: Operand, setting: Setting, problems: Problem[]): Value {
  let value = readBase(operand, setting, problems);
  if (operand.of !== undefined) {
    const of = { text: operand.of.image, ...spanOf(operand.of) };
    value = { is: "share", share: value, of, start: value.start, end: of.end };
  }
  const minus = operand.minus;
  if (minus.length > 1) {
    const at = { start: minus[0]!.startOffset, end: value.start };
    const text = minus.length % 2 === 0 ? "" : "-";
    problems.push(say("sign-spelling", at, sentence("left-over.minus"), [replaceFix(at, text)].map(fewer)));
  }
  if (minus.length % 2 === 1)
    value = { is: "negate", of: value, start: minus[0]!.startOffset, end: value.end };
  return value;
}

const fewer = <F extends { title: string }>(fix: F): F => ({ ...fix, title: sentence("fix.keep-sign") });

function readBase(operand: Operand, setting: Setting, problems: Problem[]): Value {
  const { number, unit, word, group } = operand;
  if (number !== undefined) return readQuantity(number, unit, problems);
  if (word !== undefined) {
    return group === undefined
      ? nameValue(word.image, word.startOffset)
      : readCall(word, group, setting, problems);
  }
  if (group !== undefined) return readGroup(group, setting, problems);
  const at = spanOf(operand.minus.at(-1)!);
  problems.push(say("missing-value", at, sentence("missing-value.after-minus")));
  return { is: "unreadable", start: at.end, end: at.end };
}

function readQuantity(number: Token, unit: Token | undefined, problems: Problem[]): Value {
  const at = { start: number.startOffset, end: endOf(unit ?? number) };
  if (number.tokenType === T.Slope) {
    const [rise, run] = number.image.split(":").map(Number);
    if (run !== 0) return { is: "slope", rise: rise!, run: run!, ...at };
    problems.push(say("unreadable", at, sentence("unreadable.slope")));
    return { is: "unreadable", ...at };
  }
  const figure = readNumber(number.image);
  if (figure === undefined) {
    problems.push(say("unreadable", at, sentence("unreadable.number", { number: number.image })));
    return { is: "unreadable", ...at };
  }
  if (unit === undefined) return { is: "number", number: figure, ...at };
  return { is: "quantity", number: figure, unit: unitOf(unit.image), unitSpan: spanOf(unit), ...at };
}

/** A name as a value, its dotted segments with their places. */
export function nameValue(name: string, start: number): Value {
  let from = start;
  const segments = name.split(".").map((text): Word => {
    const segment = { text, start: from, end: from + text.length };
    from = segment.end + 1;
    return segment;
  });
  return { is: "name", name, segments, start, end: start + name.length };
}

function readCall(word: Token, group: Group, setting: Setting, problems: Problem[]): Value {
  const at = { start: word.startOffset, end: endOf(group.close) };
  if (!setting.isFunction(word.image)) {
    const near = setting.nearFunction(word.image);
    const message =
      near === undefined
        ? sentence("unknown-word.function", { word: word.image })
        : sentence("unknown-word.function-near", { word: word.image, near });
    problems.push(
      say("unknown-word", spanOf(word), message, [
        ...(near === undefined ? [] : [replaceFix(spanOf(word), near)]),
      ]),
    );
  }
  const args: Value[] = [];
  let from = 0;
  const { items } = group;
  for (let index = 0; index <= items.length; index++) {
    const item = items[index];
    if (item !== undefined && (isChain(item) || item.tokenType !== T.Comma)) continue;
    const end = item === undefined ? group.close.startOffset : startOf(item);
    const start = from === 0 ? endOf(group.open) : endOf(items[from - 1] as Token);
    args.push(readInner(items.slice(from, index), { start, end }, setting, problems));
    from = index + 1;
  }
  return { is: "call", fn: { text: word.image, ...spanOf(word) }, args, ...at };
}

function readGroup(group: Group, setting: Setting, problems: Problem[]): Value {
  const at = { start: group.open.startOffset, end: endOf(group.close) };
  const of = readInner(
    group.items,
    { start: endOf(group.open), end: group.close.startOffset },
    setting,
    problems,
  );
  return { is: "group", of, ...at };
}

/** What stands in parentheses must be one value; every word there is a name. */
function readInner(items: readonly Item[], at: Span, setting: Setting, problems: Problem[]): Value {
  const inner: Reading = { parts: [], problems };
  for (const item of items) {
    if (isChain(item)) readChain(item, false, { ...setting, isMarker: () => false }, inner);
    else pushToken(item, inner);
  }
  const [only, extra] = inner.parts;
  if (only === undefined) {
    problems.push(
      say(
        "missing-value",
        at.end > at.start ? at : { start: at.start - 1, end: at.end + 1 },
        sentence("missing-value.here"),
      ),
    );
    return { is: "unreadable", ...at };
  }
  const told = inner.parts.some((part) => part.is === "error" && setting.told(part.start, part.end));
  if (told) return { is: "unreadable", ...at };
  if (extra !== undefined) {
    problems.push(say("left-over", extra, sentence("left-over.one-value")));
  } else if (only.is === "word") return nameValue(only.text, only.start);
  else if (only.is === "value") return only.value;
  else problems.push(say("unreadable", only, sentence("left-over.value-only")));
  return { is: "unreadable", start: only.start, end: inner.parts.at(-1)!.end };
}
