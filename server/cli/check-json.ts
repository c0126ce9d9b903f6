// What `setwright check --json` prints. Version 1: fields are only ever added.
import type { Severity } from '../../language/checks/finding.ts';

export interface CheckOutput {
  readonly version: 1;
  readonly files: readonly CheckedFile[];
  readonly counts: { readonly files: number; readonly plays: number } & Readonly<Record<Severity, number>>;
}

export interface CheckedFile {
  /** As given, with slashes; `<standard input>` for `-`. */
  readonly file: string;
  readonly findings: readonly JsonFinding[];
  /** Why the file could not be read, where it could not; it counts as an error. */
  readonly unreadable?: string;
}

/** Lines and columns count from 1; a column is a UTF-16 unit, `endColumn` the one behind the last. */
export interface JsonPlace {
  readonly line: number;
  readonly column: number;
  readonly endColumn: number;
}

export interface JsonFinding extends JsonPlace {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  /** The numbers and names in the message; seconds and metres. */
  readonly params: Readonly<Record<string, string | number>>;
  /** The play's name; absent above the first play. */
  readonly play?: string;
  /** The action, look, step or header it speaks of. */
  readonly part?: string;
  /** The run-through: a look's id or the last step's key. */
  readonly run?: string;
  /** ms from the call. */
  readonly moment?: number;
  /** Metres from the floor under the ring: x to the right as the offence faces the basket, y towards half court. */
  readonly spot?: { readonly x: number; readonly y: number };
  readonly source?: { readonly text: string; readonly how: string };
  readonly related: readonly (JsonPlace & { readonly message: string })[];
  readonly fixes: readonly { readonly title: string; readonly edits: readonly (JsonPlace & { readonly text: string; readonly newLine: boolean; readonly wholeLine: boolean })[] }[];
}
