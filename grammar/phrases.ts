import { EmbeddedActionsParser } from "chevrotain";
import { finish, type Steps } from "./steps.ts";
import { T, type Token } from "./tokens.ts";

/** A number, word, group and so on, with the minus signs before it. */
export interface Operand {
  minus: Token[];
  /** A number or slope. */
  number?: Token;
  unit?: Token;
  word?: Token;
  /** What follows in parentheses, or the parentheses themselves. */
  group?: Group;
  /** What the share is of: `1/3 of rail`. */
  of?: Token;
}

export interface Group {
  open: Token;
  items: Item[];
  close: Token;
}

/** Operands joined by signs; `undefined` where a sign has nothing after it. */
export interface Chain {
  operands: (Operand | undefined)[];
  signs: Token[];
}

export type Item = Chain | Token;

/** What stands between two line ends; `end` is the newline, semicolon or brace that ends it. */
export interface Phrase {
  items: Item[];
  end: Token;
}

type Alternatives<T> = { ALT: () => T }[];

export function isChain(item: Item): item is Chain {
  return "operands" in item;
}

/**
 * The phrase grammar: seven LL(1) rules and one kind of word. Any sequence of tidied tokens fits it, so it needs no recovery;
 * what the phrases mean is decided afterwards against the vocabulary.
 */
class PhraseParser extends EmbeddedActionsParser {
  // Alternatives of what is read most are made once, not anew at every word.
  readonly #ends: Alternatives<Token> = [
    { ALT: () => this.CONSUME(T.Newline) },
    { ALT: () => this.CONSUME(T.Semicolon) },
    { ALT: () => this.CONSUME(T.Open) },
    { ALT: () => this.CONSUME(T.Close) },
  ];
  readonly #items: Alternatives<Item> = [
    { ALT: () => this.SUBRULE(this.value) },
    { ALT: () => this.CONSUME(T.Comma) },
    { ALT: () => this.CONSUME(T.Text) },
    { ALT: () => this.CONSUME(T.Day) },
    { ALT: () => this.CONSUME(T.Equals) },
    { ALT: () => this.CONSUME(T.Compare) },
    { ALT: () => this.CONSUME(T.Times) },
    { ALT: () => this.CONSUME(T.Plus) },
    { ALT: () => this.CONSUME(T.Star) },
    { ALT: () => this.CONSUME(T.Slash) },
    { ALT: () => this.CONSUME(T.Of) },
    { ALT: () => this.CONSUME(T.Unit) },
    { ALT: () => this.CONSUME(T.Error) },
  ];
  readonly #signs: Alternatives<Token> = [
    { ALT: () => this.CONSUME(T.Plus) },
    { ALT: () => this.CONSUME(T.Minus) },
    { ALT: () => this.CONSUME(T.Star) },
    { ALT: () => this.CONSUME(T.Slash) },
  ];

  readonly #operands: Alternatives<Operand> = [
    {
      ALT: () => {
        const minus: Token[] = [];
        this.AT_LEAST_ONE(() => minus.push(this.CONSUME(T.Minus)));
        let operand: Operand = { minus };
        this.OPTION(() => {
          operand = { ...this.SUBRULE(this.atom), minus };
        });
        return operand;
      },
    },
    { ALT: () => this.SUBRULE2(this.atom) },
  ];
  readonly #numbers: Alternatives<Token> = [
    { ALT: () => this.CONSUME(T.Number) },
    { ALT: () => this.CONSUME(T.Vulgar) },
  ];
  readonly #atoms: Alternatives<Operand> = [
    {
      ALT: () => {
        const operand: Operand = { minus: [], number: this.OR2(this.#numbers) };
        this.OPTION(() => {
          operand.unit = this.CONSUME(T.Unit);
        });
        return operand;
      },
    },
    { ALT: () => ({ minus: [], number: this.CONSUME(T.Slope) }) },
    {
      ALT: () => {
        const operand: Operand = { minus: [], word: this.CONSUME(T.Word) };
        this.OPTION2(() => {
          operand.group = this.SUBRULE(this.group);
        });
        return operand;
      },
    },
    { ALT: () => ({ minus: [], group: this.SUBRULE2(this.group) }) },
  ];

  constructor() {
    super(Object.values(T), { maxLookahead: 1, recoveryEnabled: false, skipValidations: true });
    this.performSelfAnalysis();
  }

  file = this.RULE("file", (): Phrase[] => {
    const phrases: Phrase[] = [];
    this.MANY(() => phrases.push(this.SUBRULE(this.phrase)));
    return phrases;
  });

  phrase = this.RULE("phrase", (): Phrase => {
    const items: Item[] = [];
    this.MANY(() => items.push(this.SUBRULE(this.item)));
    return { items, end: this.OR(this.#ends) };
  });

  item = this.RULE("item", (): Item => this.OR(this.#items));

  value = this.RULE("value", (): Chain => {
    const operands: (Operand | undefined)[] = [this.SUBRULE(this.operand)];
    const signs: Token[] = [];
    this.MANY(() => {
      signs.push(this.OR(this.#signs));
      let next: Operand | undefined;
      this.OPTION(() => {
        next = this.SUBRULE2(this.operand);
      });
      operands.push(next);
    });
    return { operands, signs };
  });

  operand = this.RULE("operand", (): Operand => this.OR(this.#operands));

  atom = this.RULE("atom", (): Operand => {
    const operand = this.OR(this.#atoms);
    let of: Token | undefined;
    this.OPTION3(() => {
      this.CONSUME(T.Of);
      this.OPTION4(() => {
        of = this.CONSUME2(T.Word);
      });
    });
    return of ? { ...operand, of } : operand;
  });

  group = this.RULE("group", (): Group => {
    const items: Item[] = [];
    const open = this.CONSUME(T.LeftParen);
    this.MANY(() => items.push(this.SUBRULE(this.item)));
    return { open, items, close: this.CONSUME(T.RightParen) };
  });
}

let parser: PhraseParser | undefined;

/** The phrases of a tidied sequence of tokens. */
export const readPhrases = (tokens: Token[]): Phrase[] => finish(phraseSteps(tokens));

/** Tokens read between two rests, at least: up to the end of the line. */
const BATCH = 2000;

/** The same, resting at the ends of some lines, where every phrase ends too. */
export function* phraseSteps(tokens: Token[]): Steps<Phrase[]> {
  parser ??= new PhraseParser();
  const phrases: Phrase[] = [];
  for (let from = 0; from < tokens.length; ) {
    let to = Math.min(tokens.length, from + BATCH);
    while (to < tokens.length && tokens[to - 1]!.tokenType !== T.Newline) to++;
    parser.input = from === 0 && to === tokens.length ? tokens : tokens.slice(from, to);
    for (const phrase of parser.file()) phrases.push(phrase);
    from = to;
    if (from < tokens.length) yield;
  }
  return phrases;
}
