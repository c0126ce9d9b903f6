// Message templates with typed parameters. `{who}` prints as it is; `{late:seconds}` prints a number of seconds with its unit, whole
// hundreds of milliseconds; `{runs:more}` prints how often the same thing shows up elsewhere, or nothing.

/** The parameter names a template asks for. */
export type ParamNames<Template extends string> = Template extends `${string}{${infer Slot}}${infer Rest}`
  ? NameOf<Slot> | ParamNames<Rest>
  : never;
type NameOf<Slot extends string> = Slot extends `${infer Name}:${string}` ? Name : Slot;

export type ParamsOf<Template extends string> = Readonly<Record<ParamNames<Template>, string | number>>;

/** Puts the parameters into their places. A parameter that is missing (only possible where the types were by-passed) prints as `(?)`. */
export function fillTemplate(template: string, params: Readonly<Record<string, string | number>>): string {
  return template.replace(/\{(\w+)(?::(\w+))?\}/g, (_, name: string, style: string | undefined) => {
    const value = params[name];
    if (value === undefined) return '(?)';
    return style === 'seconds' ? printSeconds(Number(value)) : String(value);
  });
}

/** `16 s`, `15.8 s`: seconds to a tenth. */
export function printSeconds(seconds: number): string {
  return `${Math.round(seconds * 10) / 10} s`;
}
