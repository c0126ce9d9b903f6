// docs/courts.md: the rule sets, measure by measure, with article and how it is known.
import { courtOf } from '../../language/court/court.ts';
import type { Source } from '../../language/court/point.ts';
import { ruleSets } from '../../language/court/rule-sets.ts';
import type { RuleSet } from '../../language/court/rule-set.ts';
import type { Measure } from '../../language/court/sources.ts';
import { unsaid } from './compile-example.ts';
import { floorPicture, halfCourt } from './drawing.ts';
import { drawn, type Files } from './files.ts';
import { anchor, code, gallery, page, picture, plain, table } from './markdown.ts';
import { howWords, sayHow } from './say-how.ts';

interface Fact {
  readonly name: string;
  readonly printed: string;
  readonly source: Source | undefined;
}

export function courtsPage(): Files {
  const pictures = ruleSets.map((rules) => {
    const court = courtOf(rules);
    return [`${drawn}/courts/${rules.id}.svg`, floorPicture(court, `Half court, ${rules.name}`, [], halfCourt(court, Math.min(14.4, court.halfLineY + 0.4)))] as const;
  });
  const facts = new Map(ruleSets.map((rules) => [rules.id, factsOf(rules)]));
  const names = [...new Set([...facts.values()].flatMap((all) => all.map(({ name }) => name)))];
  const text = page(
    '# Courts and counts',
    '[Reference](README.md) · [spots](spots.md) · [assumptions](assumptions.md)',
    `A play names its rule set with \`rules nba\`; \`also\` names more. Without the line it is \`${unsaid().rules.value}\`. The court is drawn and measured by it, and the checks count by it. These books change; what is here has an edition beside it, and your own league’s sheet decides.`,
    `How each value is known: ${howWords.join('; ')}.`,
    gallery(ruleSets.map(({ name }, at) => ({ name, picture: picture(pictures[at]![0], `Half court, ${name}`, 240) }))),
    '## Side by side',
    table(['', ...ruleSets.map(({ id }) => `[${id}](#${id})`)], names.map((name) => [name, ...ruleSets.map(({ id }) => facts.get(id)!.find((fact) => fact.name === name)?.printed ?? '–')])),
    ...ruleSets.map((rules) => [
      `${anchor(rules.id)}\n\n## ${rules.name}`,
      `${code(`rules ${rules.id}`)} · ${rules.edition}`,
      table(['', 'value', 'rule or page', 'how known'], facts.get(rules.id)!.filter(({ source }) => source !== undefined).map(({ name, printed, source }) => [name, plain(printed), plain(source!.text), sayHow(source!)])),
      rules.remarks.map(({ text: said, source }) => `- ${said} (${plain(source.text)}; ${sayHow(source)})`).join('\n'),
    ]),
  );
  return [...pictures, ['courts.md', text]];
}

/** `threeRadius` → `three radius`: the record's own names are words. */
const words = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);

const titles: Readonly<Record<string, string>> = {
  ringCentreToBaseline: 'ring’s centre to baseline', boardToBaseline: 'board to baseline', laneLength: 'baseline to far edge of free-throw line', threeRadius: 'three-point arc, from the ring’s centre', threeCorner: 'three-point line beside the sideline, from the ring’s centre',
  restrictedRadius: 'no-charge arc', throwInMark: 'baseline to throw-in mark', throwIn: 'seconds to throw in', backcourt: 'seconds in the backcourt', backcourtStarts: 'they begin', threeSeconds: 'seconds in the lane', defensiveThreeSeconds: 'seconds in the lane, defence',
  shotClockAfterOffensiveRebound: 'shot clock after an offensive rebound', shotClockAfterFrontcourtFoul: 'shot clock after a foul in the frontcourt', seconds: 'closely guarded', within: 'closely guarded: nearer than', countsDribbler: 'closely guarded counts a dribbler',
  lateral: 'thrower may move sideways', mayMoveBack: 'thrower may move back', mayRunEndlineAfterGoal: 'thrower may run the endline after a goal', mayHandBallOver: 'thrower may hand the ball over', periodSeconds: 'a period', overtimeSeconds: 'an overtime', startsOnThrowIn: 'on a throw-in the clock starts',
  stopsAfterGoalLastPeriod: 'clock stands after a goal, last period: last', stopsAfterGoalOtherPeriods: 'clock stands after a goal, other periods: last', leastTouch: 'a touch takes at least', blindSideSteps: 'steps from a defender who cannot see the screener', least: 'steps from one who moves, at least', most: 'steps from one who moves, at most',
  halfLineIsBackcourt: 'half line belongs to the backcourt',
};

function factsOf(rules: RuleSet): readonly Fact[] {
  const { court, counts, throwIn, clock, screens, halfLineIsBackcourt } = rules;
  const found: Fact[] = [];
  const visit = (record: object): void => {
    for (const [key, value] of Object.entries(record) as [string, unknown][]) {
      if (typeof value !== 'object' || value === null) found.push({ name: titles[key] ?? words(key), printed: '–', source: undefined });
      else if ('source' in value) found.push(factOf(titles[key] ?? words(key), value as Measure));
      else visit(value);
    }
  };
  for (const record of [court, counts, throwIn, clock, screens, { halfLineIsBackcourt }]) visit(record);
  return found;
}

function factOf(name: string, value: Measure | { readonly value: unknown; readonly source: Source }): Fact {
  if ('printed' in value) return { name, printed: /ft|in/.test(value.printed) && value.unit === 'm' ? `${value.printed} (${value.value.toFixed(2)} m)` : value.printed, source: value.source };
  return { name, printed: typeof value.value === 'boolean' ? (value.value ? 'yes' : 'no') : String(value.value), source: value.source };
}
