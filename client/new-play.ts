// "New playbook" and "New play": a few questions, and a text that moves at once.
import { commands, l10n, Position, Range, Uri, window, workspace, WorkspaceEdit, type Disposable, type QuickPickItem, type TextDocument } from 'vscode';
import * as protocol from '../server/lsp/playbook-protocol.ts';
import { asLabel } from './as-label.ts';
import { fileName, textColumn } from './open-play.ts';
import type { ServerLine } from './server-line.ts';
import { sayAgainst } from './playbook/play-words.ts';
import type { Newcomer } from './newcomer.ts';
import { ageOfTeam, ofTheTeamFirst, type AgeOfTeam } from './age-of-team.ts';

type Answers = Omit<protocol.NewPlay, 'version' | 'as' | 'uri'>;

const readText = (value: unknown) => (typeof value === 'string' ? value : undefined);

export function registerNewPlay({ ask }: Pick<ServerLine, 'ask'>, newcomer: Newcomer, language: string): Disposable[] {
  const choicesFor = (document: TextDocument | undefined) =>
    ask(protocol.choicesMethod, document === undefined ? {} : { uri: document.uri.toString() }, protocol.readChoices);
  const textOf = (as: protocol.NewPlay['as'], answers: Answers) => ask(protocol.newPlayMethod, { as, ...answers }, readText);

  /** From an alignment; `wanted` answers questions before they are asked. */
  async function newPlay(wanted: unknown) {
    const editor = window.activeTextEditor;
    const open = editor?.document.languageId === language ? editor.document : undefined;
    const there = await choicesFor(open);
    if (there === undefined) return;
    const where = open === undefined ? 'file' : await askWhere(open, there.taken.length);
    if (where === undefined) return;
    const into = where === 'here' ? open : undefined;
    const choices = into === open ? there : await choicesFor(undefined);
    if (choices === undefined) return;
    const known = readWanted(wanted);
    const levelSaid = into !== undefined && choices.levelSaid;
    const answers = await askForPlay(choices, known, levelSaid, questions(l10n.t('New play'), unanswered(known, levelSaid)));
    if (answers === undefined) return;
    if (into !== undefined) return append(into, answers);
    const text = await textOf('file', answers);
    if (text !== undefined) await writeFile(answers.name, text, besideOf(open));
  }

  /** Behind the last play of the open file. */
  async function append(document: TextDocument, answers: Answers) {
    const text = await textOf('play', answers);
    if (text === undefined) return;
    const end = document.lineAt(document.lineCount - 1).range.end;
    const lead = end.character === 0 ? '' : '\n';
    const edit = new WorkspaceEdit();
    edit.insert(document.uri, end, lead + (document.getText().trim() === '' ? text.trimStart() : text));
    await workspace.applyEdit(edit);
    await showNew(document, answers.name);
  }

  async function newPlaybook(wanted: unknown) {
    const choices = await choicesFor(undefined);
    if (choices === undefined) return;
    const { team: said, ...others } = readWanted(wanted);
    const known = { name: l10n.t('First light'), ...others };
    const next = questions(l10n.t('New playbook'), unanswered(known, false) + (said === undefined ? 1 : 0));
    const team = said ?? (await window.showInputBox({ ...next(), prompt: l10n.t('The team’s name, as it stands on the playbook'), placeHolder: l10n.t('Our team'), validateInput: complainOfName }));
    if (team === undefined) return;
    const answers = await askForPlay({ ...choices, levels: ofTheTeamFirst(choices.levels, team) }, known, false, next, ageOfTeam(choices.levels, team));
    const text = answers && (await textOf('playbook', { ...answers, team }));
    if (answers !== undefined && text !== undefined) await writeFile(team, text, workspace.workspaceFolders?.[0]?.uri, answers.name);
  }

  /** Without a folder, or where it may not be written, as a text that has no file yet. */
  async function writeFile(name: string, text: string, folder: Uri | undefined, play = name) {
    const uri = folder && (await freeName(folder, name));
    const written = uri !== undefined && (await workspace.fs.writeFile(uri, new TextEncoder().encode(text)).then(() => true, () => false));
    const document = written ? await workspace.openTextDocument(uri) : await workspace.openTextDocument({ language, content: text });
    await showNew(document, play);
  }

  /** The new play beside its picture, the cursor in its first line of action. */
  async function showNew(document: TextDocument, name: string) {
    const lines = document.getText().split(/\r\n|\r|\n/);
    const head = Math.max(0, lines.findLastIndex((line) => line.startsWith(`play "${name.replace(/["“”]/g, ' ').replace(/\s+/g, ' ').trim()}`)));
    const step = lines.findIndex((line, at) => at > head && /^\s*step\b/.test(line));
    const at = new Position(Math.max(head, step + 1), 4);
    const editor = await window.showTextDocument(document, { selection: new Range(at, at), viewColumn: textColumn(), preview: false });
    editor.revealRange(new Range(head, 0, lines.length, 0));
    await commands.executeCommand('setwright.showPlay', document.uri, at.line);
    await newcomer.hasWritten();
  }

  return [commands.registerCommand('setwright.newPlay', newPlay), commands.registerCommand('setwright.newPlaybook', newPlaybook)];
}

/** Where a play that is open lies, if that is in the workspace, one more belongs; else into its first folder. */
function besideOf(open: TextDocument | undefined): Uri | undefined {
  const isWithin = open !== undefined && workspace.getWorkspaceFolder(open.uri) !== undefined;
  return isWithin ? Uri.joinPath(open.uri, '..') : workspace.workspaceFolders?.[0]?.uri;
}

/** How a question stands: which of how many. A click beside it, to look at the picture, loses no answer. */
type NextQuestion = () => { readonly title: string; readonly ignoreFocusOut: true };

function questions(title: string, total: number): NextQuestion {
  let asked = 0;
  return () => ({ title: total < 2 ? title : l10n.t('{0}: question {1} of {2}', title, ++asked, total), ignoreFocusOut: true });
}

const unanswered = (known: Partial<Answers>, levelSaid: boolean): number =>
  (['name', 'alignment', 'against', ...(levelSaid ? [] : (['level'] as const))] as const).filter((key) => known[key] === undefined).length;

/** A file that holds one play is that play's own; where several stand, or none yet, one more belongs there. */
async function askWhere(open: TextDocument, playsThere: number): Promise<'here' | 'file' | undefined> {
  const file = asLabel(fileName(open.uri));
  const here = { label: l10n.t('At the end of {0}', file), detail: playsThere === 0 ? l10n.t('There is no play yet') : l10n.t('Below the plays that stand there already'), value: 'here' as const };
  const ofItsOwn = { label: l10n.t('In a file of its own'), detail: l10n.t('A new text, named after the play'), value: 'file' as const };
  const chosen = await window.showQuickPick(
    playsThere === 1 ? [ofItsOwn, here] : [here, ofItsOwn],
    { title: l10n.t('New play'), placeHolder: l10n.t('Where is it written?'), ignoreFocusOut: true },
  );
  return chosen?.value;
}

async function askForPlay(choices: protocol.Choices, known: Partial<Answers>, levelSaid: boolean, next: NextQuestion, age?: AgeOfTeam): Promise<Answers | undefined> {
  const complain = (name: string) => complainOfName(name) ?? (choices.taken.some((one) => one.toLowerCase() === name.trim().toLowerCase()) ? l10n.t('This file has a play of that name.') : undefined);
  const name = known.name ?? (await window.showInputBox({ ...next(), prompt: l10n.t('What do you call it on the bench?'), placeHolder: l10n.t('First light'), validateInput: complain }));
  if (name === undefined) return undefined;
  const start = known.alignment !== undefined ? { alignment: known.alignment, throwIn: known.throwIn } : await pickStart(choices, next);
  if (start === undefined) return undefined;
  const against = known.against ?? (await pick(next, l10n.t('Against what defence?'), choices.defences.map((value) => ({ label: asLabel(sayAgainst(value)), value, description: value === 'man' ? l10n.t('man-to-man') : l10n.t('a zone') }))));
  if (against === undefined) return undefined;
  if (levelSaid) return { name: name.trim(), ...start, against };
  const level = known.level ?? (await pick(next, l10n.t('How old are the players? The times depend on it.'), choices.levels.map((value) => ({ label: sayLevel(value), value, description: value, ...(age?.level === value && age.insteadOf !== undefined && { detail: l10n.t('{0} has no times of its own: these fit best', age.insteadOf) }) }))));
  return level === undefined ? undefined : { name: name.trim(), ...start, against, level };
}

/** How they stand, or from where the ball is thrown in. A few letters find either: `side`, `horns`, `left corner`. */
async function pickStart({ alignments }: protocol.Choices, next: NextQuestion): Promise<Pick<Answers, 'alignment' | 'throwIn'> | undefined> {
  const throwInLabels = { sideline: l10n.t('throw-in from the side'), baseline: l10n.t('throw-in from the baseline') };
  const items = alignments.map(({ name, places, own, throwIn }) => ({
    label: throwIn === undefined ? asLabel(name) : throwInLabels[throwIn],
    detail: own ? l10n.t('your own') : places,
    value: { alignment: name, ...(throwIn !== undefined && { throwIn }) },
  }));
  return (await window.showQuickPick(items, { ...next(), placeHolder: l10n.t('Where do they stand at the start? Letters find it: horns, side, corner …'), matchOnDetail: true }))?.value;
}

async function pick(next: NextQuestion, placeHolder: string, items: readonly (QuickPickItem & { readonly value: string })[]): Promise<string | undefined> {
  return (await window.showQuickPick(items, { ...next(), placeHolder, matchOnDetail: true, matchOnDescription: true }))?.value;
}

function complainOfName(name: string): string | undefined {
  if (name.trim() === '') return l10n.t('It needs a name.');
  return /["“”]/.test(name) ? l10n.t('A name cannot hold quotation marks.') : undefined;
}

function sayLevel(level: string): string {
  const words: Readonly<Record<string, string>> = {
    u10: l10n.t('under 10'), u12: l10n.t('under 12'), u14: l10n.t('under 14'), u16: l10n.t('under 16'), hs: l10n.t('high school'), college: l10n.t('college, or grown-ups in a club'), pro: l10n.t('grown-ups who play for a living'),
  };
  return words[level] ?? level;
}

/** What a caller of the command already says; anything else is asked. */
const readWanted = (value: unknown) => protocol.readAnswers(value) ?? {};

/** `Côté fort!` is the file `cote-fort.play`; a second one `cote-fort-2.play`. */
async function freeName(folder: Uri, name: string): Promise<Uri | undefined> {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'play';
  for (let number = 1; number < 100; number++) {
    const uri = Uri.joinPath(folder, `${plain}${number === 1 ? '' : `-${number}`}.play`);
    const there = await workspace.fs.stat(uri).then(() => true, () => false);
    if (!there) return uri;
  }
  return undefined;
}
