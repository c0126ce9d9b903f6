// What is moved by hand in a panel is written by the server's edits: one step in the text, undone as one.
import { l10n, Range, workspace, WorkspaceEdit, type Uri } from 'vscode';
import * as protocol from '../../server/lsp/protocol.ts';
import type { FromPlayer, Outcome } from '../preview/messages.ts';
import type { ServerLine } from '../server-line.ts';

type Asked<Kind extends FromPlayer['kind']> = Omit<Extract<FromPlayer, { kind: Kind }>, 'v' | 'id' | 'seq'>;

type Told = Pick<Outcome, 'words' | 'refused' | 'at' | 'changes'>;

interface Pictured {
  readonly uri: Uri;
  /** Of the text that the picture was made from. */
  readonly documentVersion: number | undefined;
}

/** The server says the same of an older picture. */
export const textHasChanged = (): string => l10n.t('The text has changed meanwhile. Try again on the new picture.');

/** Has the change written, or only asks for its words; a text that has changed since the picture is left alone. */
export async function changeByHand(ask: ServerLine['ask'], { uri, documentVersion }: Pictured, message: Asked<'intent'> | Asked<'fix'>): Promise<Told> {
  if (documentVersion === undefined) return { refused: textHasChanged() };
  const what = message.kind === 'intent' ? { kind: message.kind, intent: message.intent } : { kind: message.kind, code: message.code, finding: message.finding, fix: message.fix };
  const question = { uri: uri.toString(), documentVersion, playKey: message.play, what } satisfies Omit<protocol.ByHand, 'version'>;
  const answer = await ask(protocol.byHandMethod, question, protocol.readByHandAnswer);
  if (answer === undefined) return { refused: textHasChanged() };
  if ('refused' in answer) return answer;
  const { edits, ...told } = answer;
  if (message.kind === 'intent' && message.dry) return told;
  const document = workspace.textDocuments.find((open) => open.uri.toString() === uri.toString());
  if (document?.version !== documentVersion) return { refused: textHasChanged() };
  const change = new WorkspaceEdit();
  for (const { range: { start, end }, newText } of edits) change.replace(uri, new Range(start.line, start.character, end.line, end.character), newText);
  return edits.length === 0 || (await workspace.applyEdit(change)) ? told : { refused: textHasChanged() };
}
