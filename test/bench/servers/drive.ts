// Language servers as whole processes over real stdio, driven one beside the other.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver-protocol/node';
import type { Position, PublishDiagnosticsParams } from 'vscode-languageserver-protocol';

/** A place where a few letters are typed and deleted in turn. */
export interface Typed extends Position {
  readonly letters: string;
}

export interface Measured {
  readonly name: string;
  readonly command: readonly string[];
  readonly language: string;
  /** Milliseconds after which it has told all it has to tell of a text; for one that does not say which version it speaks of. */
  readonly calm?: number;
  readonly options?: object;
  readonly settings?: object;
}

export interface Text {
  /** Its place in the workspace folder. */
  readonly file: string;
  readonly text: string;
  /** Brings or takes an error, so that what is told changes at every edit. */
  readonly error: Typed;
  /** After these letters the list of what can follow is asked for. */
  readonly list: Typed;
}

const patience = 60_000;

/** Milliseconds; fails where nothing comes. */
function within<Answer>(what: string, answer: Promise<Answer>): Promise<Answer> {
  let timer: NodeJS.Timeout;
  const late = new Promise<never>((_, reject) => (timer = setTimeout(() => reject(new Error(`waited in vain for ${what}`)), patience)));
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}

/** A server from its start to its end; all times are milliseconds. */
export interface Driven {
  /** When its process was started. */
  readonly began: number;
  /** From the start of the process to the answer. */
  readonly initialize: () => Promise<number>;
  /** To the text's first findings, since it was opened or since `since`. */
  readonly open: (text: Text, since?: number) => Promise<number>;
  /** An edit that brings or takes an error, to the findings of that text. */
  readonly edit: (text: Text) => Promise<number>;
  /** The same for letters typed over those that stand there from such an edit before; undefined takes them back. */
  readonly typeOver: (text: Text, typed: Typed | undefined) => Promise<number>;
  /** Letters typed, and at once the question what can follow, to its answer; then the letters are deleted. */
  readonly complete: (text: Text) => Promise<number>;
  /** Edits that nobody waits for, one behind the other; then the findings of the last. */
  readonly type: (text: Text, edits: number) => Promise<void>;
  readonly ask: (method: string, params: object) => Promise<unknown>;
  /** Megabytes of the process and those it has started; undefined where the system does not say. */
  readonly memory: () => number | undefined;
  readonly stop: () => Promise<void>;
}

interface OpenText {
  version: number;
  /** The letters that stand in it now. */
  typed: Typed | undefined;
  told?: { readonly version: number | undefined; readonly said: string };
}

export function drive(server: Measured, folder: string): Driven {
  const began = performance.now();
  const [command, ...args] = server.command as [string, ...string[]];
  const child = spawn(command, args, { cwd: folder, stdio: ['pipe', 'pipe', 'ignore'] });
  const connection = createMessageConnection(new StreamMessageReader(child.stdout), new StreamMessageWriter(child.stdin));
  const texts = new Map<string, OpenText>();
  const waiting = new Set<() => void>();
  const uriOf = (text: Text) => pathToFileURL(`${folder}/${text.file}`).href;

  connection.onNotification('textDocument/publishDiagnostics', ({ uri, version, diagnostics }: PublishDiagnosticsParams) => {
    const text = texts.get(decodeURIComponent(uri));
    if (text !== undefined) text.told = { version, said: JSON.stringify(diagnostics) };
    waiting.forEach((look) => look());
  });
  connection.onRequest('workspace/configuration', ({ items }: { items: readonly unknown[] }) => items.map(() => server.settings ?? null));
  connection.onRequest('client/registerCapability', () => null);
  connection.onRequest('window/workDoneProgress/create', () => null);
  connection.listen();

  const ask: Driven['ask'] = (method, params) => within(method, connection.sendRequest(method, params));
  const openText = (text: Text): OpenText => texts.get(decodeURIComponent(uriOf(text)))!;

  function findings(text: Text, before: string | undefined): Promise<void> {
    const open = openText(text);
    const { version } = open;
    return within('findings', new Promise((resolve) => {
      const look = () => {
        const { told } = open;
        if (told === undefined || (told.version !== undefined && told.version < version)) return;
        // A server that names no version is believed once it says something else.
        if (told.version === undefined && told.said === before) return;
        waiting.delete(look);
        resolve();
      };
      waiting.add(look);
    }));
  }

  /** Puts the letters in the place of those that stand there, or where they are to stand. */
  function put(text: Text, letters: Typed | undefined): Promise<void> {
    const open = openText(text);
    const { line, character } = open.typed ?? letters!;
    const end = { line, character: character + (open.typed?.letters.length ?? 0) };
    open.typed = letters;
    open.version++;
    return connection.sendNotification('textDocument/didChange', { textDocument: { uri: uriOf(text), version: open.version }, contentChanges: [{ range: { start: { line, character }, end }, text: letters?.letters ?? '' }] });
  }

  /** Types the letters; deletes those that stand there. */
  const toggle = (text: Text, letters: Typed) => put(text, openText(text).typed === undefined ? letters : undefined);

  const calm = () => (server.calm === undefined ? Promise.resolve() : pause(server.calm));
  const toFindings = async (text: Text, change: () => Promise<void>) => {
    await calm();
    const before = openText(text).told?.said;
    const since = performance.now();
    await change();
    await findings(text, before);
    return performance.now() - since;
  };
  const edit: Driven['edit'] = (text) => toFindings(text, () => toggle(text, text.error));
  const typeOver: Driven['typeOver'] = (text, typed) => toFindings(text, () => put(text, typed));

  return {
    began, edit, typeOver, ask,
    async initialize() {
      const root = pathToFileURL(folder).href;
      // As the library that VS Code's extensions use says of itself.
      const completion = { completionItem: { snippetSupport: true }, completionList: { itemDefaults: ['commitCharacters', 'editRange', 'insertTextFormat', 'insertTextMode', 'data'] } };
      const capabilities = {
        workspace: { configuration: true, workspaceFolders: true },
        textDocument: { publishDiagnostics: { versionSupport: true, relatedInformation: true }, completion },
      };
      await ask('initialize', { processId: process.pid, rootUri: root, workspaceFolders: [{ uri: root, name: 'bench' }], capabilities, initializationOptions: server.options ?? {} });
      const took = performance.now() - began;
      await connection.sendNotification('initialized', {});
      return took;
    },
    async open(text, since = performance.now()) {
      texts.set(decodeURIComponent(uriOf(text)), { version: 1, typed: undefined });
      const come = findings(text, undefined);
      await connection.sendNotification('textDocument/didOpen', { textDocument: { uri: uriOf(text), languageId: server.language, version: 1, text: text.text } });
      await come;
      return performance.now() - since;
    },
    async complete(text) {
      const { line, character, letters } = text.list;
      const since = performance.now();
      await toggle(text, text.list);
      const answer = await ask('textDocument/completion', { textDocument: { uri: uriOf(text) }, position: { line, character: character + letters.length }, context: { triggerKind: 1 } });
      const took = performance.now() - since;
      const items = Array.isArray(answer) ? answer : ((answer as { items?: unknown[] } | null)?.items ?? []);
      if (items.length === 0) throw new Error(`${server.name} offered nothing`);
      await toggle(text, text.list);
      await calm();
      return took;
    },
    async type(text, edits) {
      for (let count = 0; count < edits - 1; count++) await toggle(text, text.error);
      await edit(text);
    },
    memory() {
      try {
        return memoryOf(child.pid!, childrenOfAll());
      } catch {
        return undefined;
      }
    },
    async stop() {
      const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
      const kill = setTimeout(() => child.kill('SIGKILL'), 3000);
      await Promise.race([ended, connection.sendRequest('shutdown').then(() => connection.sendNotification('exit'), () => undefined)]);
      await ended;
      clearTimeout(kill);
      connection.dispose();
    },
  };
}

export const pause = (milliseconds: number) => new Promise<void>((resolve) => setTimeout(resolve, milliseconds));

function childrenOfAll(): ReadonlyMap<number, readonly number[]> {
  const children = new Map<number, number[]>();
  for (const name of readdirSync('/proc').filter((one) => /^\d+$/.test(one))) {
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
      const parent = Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]);
      children.set(parent, [...(children.get(parent) ?? []), Number(name)]);
    } catch {
      // It has ended meanwhile.
    }
  }
  return children;
}

function memoryOf(process: number, children: ReadonlyMap<number, readonly number[]>): number {
  const own = Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${process}/status`, 'utf8'))![1]) / 1024;
  return (children.get(process) ?? []).reduce((sum, child) => sum + memoryOf(child, children), own);
}

/** The value that so many of a hundred do not pass. */
export function percentile(values: readonly number[], of: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil((of / 100) * sorted.length) - 1))]!;
}
