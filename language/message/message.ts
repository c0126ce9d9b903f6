// How a layer says something to a coach: an English template with named gaps, and what stands in them. The edge puts it into his language.
// Every template is written out where it is used, so that `npm run l10n` finds it; the compiler holds the call to the gaps.
import { fillTemplate, type Message, type Param, type ParamNames, type ParamsOf } from './template.ts';

export type { Message, Param, Params } from './template.ts';

/** A message, or words of the notation, which are the same in every language. */
export type Words = Message | string;

export function message<const Template extends string>(template: Template, ...[params]: [ParamNames<Template>] extends [never] ? [] : [ParamsOf<Template>]): Message {
  return { template, params: params ?? {} };
}

/** Puts words into a language. */
export type Say = (words: Words) => string;

/** English template → the same in another language, with the same gaps. */
export type Translation = Readonly<Record<string, string>>;

export const inEnglish: Say = (words) => (typeof words === 'string' ? words : fillTemplate(words.template, words.params));

/** A message of which anything has not been translated is English as a whole: never half and half. */
export function sayWith(translation: Translation | undefined): Say {
  if (translation === undefined) return inEnglish;
  const isTranslated = (param: Param): boolean => {
    if (typeof param !== 'object') return true;
    return 'template' in param ? Object.hasOwn(translation, param.template) && Object.values(param.params).every(isTranslated) : param.every(isTranslated);
  };
  return (words) => (typeof words === 'string' || !isTranslated(words) ? inEnglish(words) : fillTemplate(words.template, words.params, (template) => translation[template]!));
}

type Item = Words | number;
const wordsOf = (item: Item | undefined): Words => (typeof item === 'object' ? item : String(item ?? ''));

/** `2, 3 or 5` */
export const oneOf = (items: readonly Item[]): Words => (items.length < 2 ? wordsOf(items[0]) : message('{some} or {last}', { some: items.slice(0, -1), last: items.at(-1)! }));

/** `2, 3 and 5` */
export const allOf = (items: readonly Item[]): Words => (items.length < 2 ? wordsOf(items[0]) : message('{some} and {last}', { some: items.slice(0, -1), last: items.at(-1)! }));
