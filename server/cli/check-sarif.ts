// What `setwright check --sarif` prints: the findings in the form that review services read, SARIF 2.1.0 (an OASIS standard). Section numbers
// are those of the standard. Each rule brings its manual entry along, so that a reviewer reads why without leaving the review.
import { inEnglish } from '../../language/message/message.ts';
import { catalogue } from '../../language/checks/catalogue.ts';
import type { Entry } from '../../language/checks/check.ts';
import type { Severity } from '../../language/checks/finding.ts';
import { restsOn } from '../../language/checks/rests-on.ts';
import { tellFinding } from '../../language/checks/tell-finding.ts';
import type { FileFinding } from '../../language/keeper.ts';
import { capital } from '../../language/words/sentences.ts';
import type { TextPlace } from '../../language/play/play.ts';
import { asMessage } from '../lsp/as-message.ts';
import { explained } from './explain.ts';
import { standardInput, type UnreadableFile } from './files.ts';
import type { OpenedFile } from './open-book.ts';
import { momentOf } from './show-finding.ts';

/** §3.27.10; a hint is worth a note. */
const levels: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = { error: 'error', warning: 'warning', hint: 'note' };

export interface CheckedForSarif {
  readonly file?: OpenedFile | undefined;
  readonly findings?: readonly FileFinding[] | undefined;
  readonly unreadable?: UnreadableFile | undefined;
}

const unreadableCode = 'unreadable-file';

/** §3.11.6, from memory: a viewer makes a link of words in brackets with an address or a number behind them. A coach's words stay words. */
const text = (words: string) => ({ text: asMessage(words) });

/** `refused`: what was not checked at all, in sentences. */
export function toSarif(checked: readonly CheckedForSarif[], refused: readonly string[], version: string): object {
  const codes = [...new Set(checked.flatMap(({ findings = [], unreadable }) => (unreadable === undefined ? findings.map(({ code }) => code) : [unreadableCode])))].sort();
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Setwright', semanticVersion: version, rules: codes.map(ruleOf) } },
        invocations: [{ executionSuccessful: refused.length === 0, toolExecutionNotifications: refused.map((why) => ({ level: 'error', message: text(why) })) }],
        // §3.14.17: a column is a UTF-16 unit.
        columnKind: 'utf16CodeUnits',
        originalUriBaseIds: { [root]: { description: { text: 'The folder in which setwright was called.' } } },
        results: checked.flatMap(({ file, findings = [], unreadable }) => (unreadable !== undefined ? [unreadableResult(unreadable, codes)] : file === undefined ? [] : findings.map((finding) => resultOf(file, finding, codes)))),
      },
    ],
  };
}

const root = '%SRCROOT%';

function ruleOf(code: string): object {
  const entry = catalogue[code];
  if (entry === undefined) return { id: code, shortDescription: { text: 'A file cannot be read' }, defaultConfiguration: { level: 'error' } };
  return {
    id: code,
    shortDescription: { text: entry.manual.title },
    fullDescription: { text: entry.manual.why },
    help: { text: explained(entry), markdown: markdownOf(entry) },
    defaultConfiguration: { level: levels[entry.severity] },
  };
}

/** The entry as `setwright explain` prints it, for who shows Markdown. */
function markdownOf({ code, manual, source }: Entry): string {
  const lines = (text: string) => `\`\`\`text\n${text.trimEnd()}\n\`\`\``;
  return [
    `**${manual.title}**`,
    manual.why,
    ...(manual.beside === undefined ? [] : [`With a file \`${manual.beside.name}\` beside it:`, lines(manual.beside.text)]),
    ...(manual.wrong === undefined ? [] : ['Wrong:', lines(manual.wrong)]),
    ...(manual.right === undefined ? [] : ['Right:', lines(manual.right)]),
    `Rests on: ${inEnglish(restsOn(source))}`,
    `To silence it where you mean it: \`allow ${code} "why"\``,
  ].join('\n\n');
}

function resultOf(file: OpenedFile, finding: FileFinding, codes: readonly string[]): object {
  const { code, severity, message, play, part, run, related, fixes } = tellFinding(finding) as ReturnType<typeof tellFinding> & FileFinding;
  const moment = momentOf({ ...finding, ...file.wayOf(finding) });
  const artifactLocation = locationOf(file.name);
  const region = (place: TextPlace) => regionOf(finding.firstLine + place.line, place.at, Math.max(place.to, place.at + 1));
  return {
    ruleId: code,
    ruleIndex: codes.indexOf(code),
    level: levels[severity],
    message: text(moment === undefined ? message : `${message} (${capital(moment)}.)`),
    locations: [{ physicalLocation: { artifactLocation, region: region(finding.place) }, ...(play !== undefined && { logicalLocations: [{ name: play }] }) }],
    ...(related.length > 0 && { relatedLocations: related.map((other, id) => ({ id, physicalLocation: { artifactLocation, region: region(other.place) }, message: text(other.message) })) }),
    // §3.27.18: the same finding of the next version, wherever its line has moved to.
    partialFingerprints: { 'partOfPlay/v1': [code, play, part, run].filter((one) => one !== undefined).join(' ') },
    ...(fixes.length > 0 && {
      fixes: fixes.map(({ title, edits }) => ({
        description: text(title),
        artifactChanges: [{ artifactLocation, replacements: edits.map((edit) => replacementOf(finding.firstLine, edit)) }],
      })),
    }),
  };
}

/** §3.57: what goes, and what stands there instead. */
function replacementOf(firstLine: number, { line, at, to, text, newLine, wholeLine }: FileFinding['fixes'][number]['edits'][number]): object {
  const startLine = firstLine + line + 1;
  if (wholeLine === true) return { deletedRegion: { startLine, startColumn: 1, endLine: startLine + 1, endColumn: 1 } };
  if (newLine === true) return { deletedRegion: { startLine, startColumn: 1, endColumn: 1 }, insertedContent: { text: `${text}\n` } };
  return { deletedRegion: regionOf(firstLine + line, at, to), insertedContent: { text } };
}

/** §3.30: lines and columns from 1, `endColumn` the one behind the last. */
function regionOf(line: number, at: number, to: number): object {
  return { startLine: line + 1, startColumn: at + 1, endColumn: to + 1 };
}

function unreadableResult({ name, why }: UnreadableFile, codes: readonly string[]): object {
  return { ruleId: unreadableCode, ruleIndex: codes.indexOf(unreadableCode), level: 'error', message: text(`This file cannot be read: ${why}.`), locations: [{ physicalLocation: { artifactLocation: locationOf(name) } }] };
}

/** §3.4: a path below the folder of the call, as a URI has it. */
function locationOf(name: string): object {
  if (name === standardInput) return { uri: 'standard-input.play', description: { text: 'Standard input.' } };
  return { uri: name.split('/').map(encodeURIComponent).join('/'), uriBaseId: root };
}
