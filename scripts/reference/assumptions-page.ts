// docs/assumptions.md: whose legs, with sources, and what each assumption is worth.
import { inEnglish } from '../../language/message/message.ts';
import { youthCaution, youthNotes } from '../../language/court/youth.ts';
import { ballFacts } from '../../language/motion/ball.ts';
import { levelIds, levelTable, LEVELS, quantities, womenTopSpeed, type Row } from '../../language/motion/levels.ts';
import { unsaid } from './compile-example.ts';
import type { Files } from './files.ts';
import { page, plain, table } from './markdown.ts';
import { sayHow } from './say-how.ts';
import { sensitivities, type Timed } from './sensitivities.ts';

const units: Readonly<Record<Row['unit'], string>> = { m: 'm', s: 's', 'm/s': 'm/s', 'm/s2': 'm/s²', share: 'share' };

export function assumptionsPage(): Files {
  const measured = sensitivities();
  const strongest = measured.changed.map(({ says, late }) => ({ says, most: late[0]! })).toSorted((a, b) => Math.abs(b.most) - Math.abs(a.most))[0]!;
  const lighthouse = measured.plays[0]!;
  const text = page(
    '# Assumptions',
    '[Reference](README.md) · [rules of order](RULES-OF-ORDER.md) · [courts](courts.md)',
    'The times are a model’s: these numbers, put together by [the rules of order](RULES-OF-ORDER.md). They are there to plan with. They are no promise and no yardstick for a player; time your own team, and put a player’s own pace into the [roster](notation.md#roster).',
    youthCaution.text,
    '## Whose legs',
    `The word behind \`level\`: ${levelIds.map((id) => `\`${id}\` ${LEVELS[id].name}`).join(', ')}. A play without the line is taken to be for \`${unsaid().level.value}\`. A number in *italics* has no source at that level and is continued from its neighbours.`,
    table(['', 'unit', ...levelIds], quantities.map((quantity) => rowOf(levelTable[quantity])), levelIds.map((_, at) => at + 2)),
    '### Where they come from',
    table(['source', 'how known', 'of'], sourceRows()),
    `Top speeds of girls and women are not in the table, which holds what has been measured most: ${Object.entries(womenTopSpeed.values).map(([id, value]) => `${id} ${value} m/s`).join(', ')} (${plain(womenTopSpeed.source.text)}; ${sayHow(womenTopSpeed.source)}).`,
    '### The ball in the air',
    Object.values(ballFacts).map(({ source }) => `- ${plain(source.text)} (${sayHow(source)})`).join('\n'),
    '## What an assumption is worth',
    `Worked out by the model itself: the example plays are scheduled again with one thing changed. The figure is how much earlier (−) or later (+) the late time of the last look comes; late is what nine runs of ten keep. In ${lighthouse.play} it is **${strongest.says}** that counts most: ${signed(strongest.most)}.`,
    table(['', ...measured.plays.map(({ play, look }) => `${play}, last look (${look})`)], [
      ['as it stands: typical, late', ...measured.plays.map(({ typical, late }) => `${seconds(typical)}, **${seconds(late)}**`)],
      ...measured.changed.map(({ says, late }) => [says, ...late.map(signed)]),
    ], measured.plays.map((_, at) => at + 1)),
    'A change of nothing means that this play waits for something else; a change against what one expects means that the waits fall another way.',
    'The same plays with other legs: typical and late time of the last look, from the call, on a throw-in from the hand-over.',
    table(['level', ...measured.plays.map(({ play, level }) => `${play} (written for ${level})`)], measured.levels.map(({ level, times }) => [level, ...times.map(both)]), measured.plays.map((_, at) => at + 1)),
    '## Young players',
    'What rules and guidelines of an age forbid or advise. It differs from place to place.',
    table(['levels', 'about', '', 'weight', 'source', 'how known'], youthNotes.map(({ levels, topic, weight, text: said, source }) => [levels.join(', '), topic, plain(inEnglish(said)), weight, plain(source.text), sayHow(source)])),
  );
  return [['assumptions.md', text]];
}

/** A source once, with everything that rests on it. */
function sourceRows(): readonly (readonly string[])[] {
  const all = [...new Set(quantities.map((quantity) => levelTable[quantity].source))];
  const texts = [...new Set(all.map(({ text }) => text))];
  return texts.map((text) => {
    const source = all.find((one) => one.text === text)!;
    return [plain(text), sayHow(source), quantities.filter((quantity) => levelTable[quantity].source.text === text).map((quantity) => plain(levelTable[quantity].about)).join('; ')];
  });
}

function rowOf({ about, unit, values, interpolated }: Row): readonly string[] {
  return [plain(about), units[unit], ...values.map((value, at) => (interpolated?.includes(levelIds[at]!) === true ? `*${value}*` : String(value)))];
}

const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;
const both = ({ typical, late }: Timed): string => `${seconds(typical)}, ${seconds(late)}`;

function signed(ms: number): string {
  const rounded = Math.round(ms / 10) / 100;
  return rounded === 0 ? '0' : `${rounded > 0 ? '+' : '−'}${Math.abs(rounded).toFixed(2)} s`;
}
