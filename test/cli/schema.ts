/** The part of JSON Schema that docs/check-output.schema.json and the schema of SARIF are written in. */
export interface Schema {
  readonly $ref?: string;
  readonly definitions?: Readonly<Record<string, Schema>>;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly pattern?: string;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly uniqueItems?: boolean;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly minimum?: number;
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: boolean | Schema;
  readonly items?: Schema;
}

/** Where a value is not as its schema says; empty when it is. A word of the schema that this does not know is an offence too. */
export function offences(schema: Schema, value: unknown, path = '$', root = schema): readonly string[] {
  if (schema.$ref !== undefined) return offences(root.definitions![schema.$ref.replace('#/definitions/', '')]!, value, path, root);
  const known = new Set(['type', 'enum', 'const', 'minimum', 'required', 'properties', 'additionalProperties', 'items', 'description', 'title', '$schema', '$comment', 'id', 'definitions', 'anyOf', 'oneOf', 'pattern', 'maximum', 'minItems', 'uniqueItems', 'format']);
  const found = Object.keys(schema).filter((word) => !known.has(word)).map((word) => `${path}: the schema says “${word}”`);
  if (schema.const !== undefined && value !== schema.const) found.push(`${path}: not ${String(schema.const)}`);
  if (schema.enum !== undefined && !schema.enum.includes(value)) found.push(`${path}: not one of ${schema.enum.join(', ')}`);
  if (schema.type !== undefined && ![schema.type].flat().some((type) => isOf(type as string, value))) return [...found, `${path}: not ${String(schema.type)}`];
  if (schema.minimum !== undefined && typeof value === 'number' && value < schema.minimum) found.push(`${path}: below ${schema.minimum}`);
  if (schema.maximum !== undefined && typeof value === 'number' && value > schema.maximum) found.push(`${path}: above ${schema.maximum}`);
  if (schema.pattern !== undefined && typeof value === 'string' && !new RegExp(schema.pattern).test(value)) found.push(`${path}: not like ${schema.pattern}`);
  const fits = (choices: readonly Schema[]) => choices.filter((one) => offences(one, value, path, root).length === 0).length;
  if (schema.anyOf !== undefined && fits(schema.anyOf) === 0) found.push(`${path}: none of what it may be`);
  if (schema.oneOf !== undefined && fits(schema.oneOf) !== 1) found.push(`${path}: not one of what it may be`);
  if (Array.isArray(value)) {
    if (value.length < (schema.minItems ?? 0)) found.push(`${path}: fewer than ${schema.minItems}`);
    if (schema.uniqueItems === true && new Set(value.map((one) => JSON.stringify(one))).size < value.length) found.push(`${path}: something twice`);
    return [...found, ...value.flatMap((one, at) => (schema.items === undefined ? [] : offences(schema.items, one, `${path}[${at}]`, root)))];
  }
  if (typeof value !== 'object' || value === null) return found;
  for (const name of schema.required ?? []) if (!Object.hasOwn(value, name)) found.push(`${path}.${name}: missing`);
  for (const [name, own] of Object.entries(value)) {
    const rule = schema.properties?.[name] ?? schema.additionalProperties ?? true;
    if (rule === false) found.push(`${path}.${name}: not in the schema`);
    else if (rule !== true) found.push(...offences(rule, own, `${path}.${name}`, root));
  }
  return found;
}

function isOf(type: string, value: unknown): boolean {
  if (type === 'integer') return Number.isInteger(value);
  if (type === 'array') return Array.isArray(value);
  if (type === 'object') return typeof value === 'object' && value !== null && !Array.isArray(value);
  return typeof value === type;
}
