// Message templates with typed parameters. `{who}` prints as it is; `{late:seconds}` prints a number of seconds with its unit, whole
// hundreds of milliseconds.

/** The parameter names a template asks for. */
export type ParamNames<Template extends string> = Template extends `${string}{${infer Slot}}${infer Rest}`
  ? NameOf<Slot> | ParamNames<Rest>
  : never;
type NameOf<Slot extends string> = Slot extends `${infer Name}:${string}` ? Name : Slot;

/** What can stand in a gap. Bare text is the play's own: its names, its words of the notation, the same in every language. A list prints with commas. */
export type Param = string | number | Message | readonly Param[];
export type Params = Readonly<Record<string, Param>>;
export type ParamsOf<Template extends string> = Readonly<Record<ParamNames<Template>, Param>>;

/** CONTRACT. A sentence for a coach in no language yet: its English template and what stands in the gaps. */
export interface Message {
  readonly template: string;
  readonly params: Params;
}

/** A template in the language it is shown in. */
export type Translate = (template: string) => string;
const english: Translate = (template) => template;

/** Puts the parameters into their places. A parameter that is missing (only possible where the types were by-passed) prints as `(?)`. */
export function fillTemplate(template: string, params: Params, translate: Translate = english): string {
  return translate(template).replace(/\{(\w+)(?::(\w+))?\}/g, (_, name: string, style: string | undefined) => {
    const value = params[name];
    if (value === undefined) return '(?)';
    return style === 'seconds' ? printSeconds(Number(value)) : printParam(value, translate);
  });
}

function printParam(value: Param, translate: Translate): string {
  if (typeof value === 'string' || typeof value === 'number') return String(value);
  if ('template' in value) return fillTemplate(value.template, value.params, translate);
  return value.map((one) => printParam(one, translate)).join(', ');
}

/** `16 s`, `15.8 s`: seconds to a tenth. */
function printSeconds(seconds: number): string {
  return `${Math.round(seconds * 10) / 10} s`;
}
