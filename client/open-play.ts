// Which play a command means, and its text in an editor.
import { Range, Uri, ViewColumn, window, workspace } from 'vscode';
import type { PlayEntry } from '../server/lsp/playbook-protocol.ts';

export interface PlaceOfPlay {
  readonly uri: Uri;
  /** A line of the play. */
  readonly line: number;
}

/** From the palette or a key: what is in front. From a button or the list of files: a uri. From a lens: its text and a line. From a list of plays: its row. */
export async function placeFromCommand(place: unknown, line: unknown): Promise<PlaceOfPlay | undefined> {
  const listed = listedPlay(place);
  const uri = listed?.uri ?? (place instanceof Uri ? place : typeof place === 'string' ? Uri.parse(place) : (window.activeTextEditor?.document.uri ?? firstOpenPlay()?.uri));
  if (uri === undefined) return undefined;
  const said = listed?.line ?? lineFrom(line);
  const isOpen = workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());
  // From a list nothing may be open yet.
  if (!isOpen || listed !== undefined) await openPlay(uri, said);
  const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
  return { uri, line: said ?? editor?.selection.active.line ?? 0 };
}

/** The text, the cursor in the line. The list keeps the keyboard, so that a coach can go on down it. Anything else that a command brings along is left alone. */
export async function openPlay(uri: unknown, line: unknown, viewColumn?: ViewColumn): Promise<void> {
  if (!(uri instanceof Uri)) return;
  const at = lineFrom(line);
  await window.showTextDocument(uri, { preview: true, preserveFocus: true, ...(at !== undefined && { selection: new Range(at, 0, at, 0) }), ...(viewColumn !== undefined && { viewColumn }) });
}

/** Where the texts are: one that is opened while a picture has the keyboard must not lie over it. */
export const textColumn = (): ViewColumn => window.activeTextEditor?.viewColumn ?? window.visibleTextEditors.find(({ viewColumn }) => viewColumn !== undefined)?.viewColumn ?? ViewColumn.One;

export function firstOpenPlay(): PlaceOfPlay | undefined {
  const document = workspace.textDocuments.find(({ languageId }) => languageId === 'setwright');
  return document && { uri: document.uri, line: 0 };
}

/** `quick.play` of `…/plays/quick.play`. */
export const fileName = ({ path }: Uri): string => path.slice(path.lastIndexOf('/') + 1);

const lineFrom = (line: unknown): number | undefined => (typeof line === 'number' && Number.isSafeInteger(line) && line >= 0 ? line : undefined);

/** Whether a command has brought its play along; else it is the one that has the keyboard. */
export const saysPlay = (place: unknown, line: unknown): boolean => lineFrom(line) !== undefined || listedPlay(place) !== undefined;

/** A row of the playbook or the bench, as one of its buttons hands it over. */
function listedPlay(value: unknown): PlaceOfPlay | undefined {
  if (typeof value !== 'object' || value instanceof Uri) return undefined;
  const row = value as { readonly play?: Partial<PlayEntry>; readonly fit?: { readonly play?: Partial<PlayEntry> } } | null;
  const play = row?.play ?? row?.fit?.play;
  return typeof play?.uri === 'string' && typeof play.line === 'number' ? { uri: Uri.parse(play.uri), line: play.line } : undefined;
}
