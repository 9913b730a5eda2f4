/**
 * Sentences as data: the twin of core/words/said.py. A room's sentences are written out at build
 * into data/said/<room>.js, in the language of the book. Pure.
 */

/** What a reader typed cannot be read; the message says what to write instead. */
export class Unreadable extends Error {
  /** @param {string} what @param {string} [mend] */
  constructor(what, mend = "") {
    super(`${inShort(what)} ${inShort(mend)}`.trim());
  }
}

/** A message on one line, with what it quotes cut to what shows where to look: in_short of problems.py. @param {string} message */
function inShort(message) {
  const line = /[\r\n]/.test(message) ? message.split(/\s+/).join(" ").trim() : message;
  if (line.length < 80) return line;
  const cut = line.replace(/"([^"]{60})[^"]{60,}"/g, '"$1…"').replace(/(\S{60})\S{20,}/g, "$1…");
  return cut.length <= 600 ? cut : `${cut.slice(0, 600)}…`;
}

/**
 * @typedef {Record<string, unknown>} Blanks
 * @typedef {string | string[] | Record<string, string>} Phrase
 * @typedef {{language: string, phrases: Record<string, any>}} Catalogue
 */

/**
 * Return what says the sentences of a room: `say(name, blanks)`, `say.refuse(name, blanks)` for an
 * error to throw, `say.words(name)` for a list.
 * @param {Catalogue} catalogue
 */
export function speaker({ language, phrases }) {
  const rules = new Intl.PluralRules(language);
  /** @param {string} name @returns {any} */
  const phrase = (name) => {
    if (!Object.hasOwn(phrases, name)) throw new ReferenceError(`No sentence is named ${name}.`);
    return phrases[name];
  };
  /** @param {string} name @param {Blanks} [blanks] */
  const say = (name, blanks = {}) => {
    const found = phrase(name);
    return fill(typeof found === "string" ? found : choose(found, blanks.count, rules), blanks);
  };
  /** @param {string} name @param {Blanks} [blanks] */
  say.refuse = (name, blanks = {}) => {
    const [what, mend] = phrase(name);
    return new Unreadable(fill(what, blanks), fill(mend, blanks));
  };
  /** @param {string} name @returns {string[]} */
  say.words = (name) => phrase(name);
  return say;
}

/** Fill the blanks of a phrase; one that is not given is an error. @param {string} phrase @param {Blanks} blanks */
export function fill(phrase, blanks) {
  return phrase.replace(/\{(\w+)\}/g, (_, name) => {
    if (blanks[name] === undefined) throw new ReferenceError(`"${phrase}" wants ${name}.`);
    return String(blanks[name]);
  });
}

/** @param {Record<string, string>} forms @param {unknown} count @param {Intl.PluralRules} rules */
function choose(forms, count, rules) {
  return forms[`=${count}`] ?? forms[category(Number(count), rules)] ?? forms.other;
}

/** The plural category of a number; a part of one is said as one is: "½ cup". @param {number} number @param {Intl.PluralRules} rules */
export function category(number, rules) {
  return rules.select(number > 0 && number < 1 ? 1 : number);
}
