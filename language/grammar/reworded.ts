// Constructions of coaches that a line of the notation says with other words: `sets a flare for 2`, `to screen for 3`, `takes two dribbles
// to`. The tokens of the plain line stand in their place, with the columns of the coach's words.
import { asHeDoes, dribblesOnce, dropsIt, firstLook, givesAHandOff, keepsItAlive, killsClock, lookForAShot, makesThePass, onAHandOff, takesDribbles, theClockSays, whereHeThrowsIn, whoGoesOn } from './reworded-ball.ts';
import { atAMan, comesFree, crossesOver, crossesTheLane, followsTheBall, getBack, getsTo, hasDone, hasToDo, inFrontOf, isDoing, isThere, makesHisWay, meetsTheBall, ontoTheCourt, runsTheFloor, saidAs, setsUpHisMan, shortRolls, standsAcross } from './reworded-moves.ts';
import { downTheGut, fillsALane, fromBehind, middleOf, ofTheFloor, onto, runsASide, theOpenSpot, underTheBasket } from './reworded-places.ts';
import { andThen, behindTheScreen, holdsIt, namedLast, offHis, outOfTheScreen, setBy, setsAScreen, shutsTheGate, theManOn, throughTheGate, toScreen } from './reworded-screens.ts';
import { asThePass, atTheSameTime, rightAway } from './reworded-waits.ts';
import { phrases } from './phrases.ts';
import type { Tokens, Types } from './rewording.ts';

/** A rule is asked at each word that it can begin with, and looks at what stands round it. */
const RULES: readonly (readonly [begins: RegExp, rule: (tokens: Tokens, at: number, types: Types) => Tokens | undefined])[] = [
  [/^gives?$/, givesAHandOff], [/^(slices?|knifes?|empties|empty|rips?)$/, saidAs], [/^(sets?|gives?|makes?|puts?)$/, setsAScreen], [/^(sets?|sets? up)$/, setsUpHisMan], [/^(to|up to)$/, toScreen], [/^(man|defender|guy)$/, theManOn], [/^(takes?|gets?|uses?|needs?|puts?)$/, takesDribbles],
  [/^(kills?|burns?|milks?|bleeds?|eats?|winds?|wastes?|melts?|lets?|runs?|uses?)$/, killsClock], [/^until$/, theClockSays], [/^(back|safe|deep|home|safety|protect|out|high|in|inside|hard|boards?|to|goes|go|stays?|stays? home)$/, getBack], [/^(on|with|in|via|off|as)$/, onAHandOff],
  [/^(,|under the .*|baseline|sideline)$/, whereHeThrowsIn], [/^(for|,|-)$/, lookForAShot], [/^(slams?|shuts?|closes?|locks?|seals?)$/, shutsTheGate], [/^gets?( to)?$/, getsTo], [/^(is|are|keeps?|starts?|begins?|continues?|goes|go|comes?)( on)?$/, isDoing], [/^(has|have)( cleared)?$/, hasDone], [/^(has|have|needs?|must|should|will|is|are)$/, hasToDo], [/^\w+ing( \w+)?$/, asHeDoes],
  [/^behind$/, behindTheScreen], [/^(open|empty|vacated|vacant)$/, theOpenSpot], [/^(at|toward|to)$/, atAMan], [/^meets?$/, meetsTheBall],
  [/^(fights?|works?|makes?|finds?|weaves?|battles?|threads?|picks?|snakes?)$/, makesHisWay], [/^(makes?|throws?|delivers?|fires?|gives?)$/, makesThePass], [/^who$/, whoGoesOn], [/^under the/, underTheBasket], [/^down$/, downTheGut], [/^(left|right) side(line)?$/, runsASide],
  [/^(is|are)$/, isThere], [/^middle$/, middleOf], [/^holds?$/, holdsIt], [/^keeps? (it|the ball|his dribble|their dribble)$/, keepsItAlive], [/^out of$/, outOfTheScreen], [/^set$/, setBy], [/^(first|second|third|last|next|main|best|final)$/, firstLook],
  [/^onto$/, onto], [/^cross(es)?$/, crossesOver], [/^(runs?|sprints?|trails?|races?|jogs?)$/, runsTheFloor], [/^'s$/, offHis], [/^(as|once|when)$/, asThePass],
  [/^at the same time$/, atTheSameTime], [/^(follows?|chases?|trails?)$/, followsTheBall], [/^through$/, throughTheGate], [/^front of/, inFrontOf], [/^right$/, rightAway], [/^and$/, andThen], [/^cross(es)?$/, crossesTheLane], [/^short(-rolls?)?$/, shortRolls], [/^of$/, ofTheFloor],
  [/^(fills?|runs?|sprints?|takes?|races?|streaks?)$/, fillsALane], [/^,$/, namedLast], [/^(once|twice)$/, dribblesOnce], [/^across$/, standsAcross], [/^from$/, fromBehind], [/^(spins?|peels?|peels? off|wheels?|shakes?|breaks? free)$/, comesFree],
  [/^(steps?|comes?|gets?|walks?|runs?|steps? in|steps? up|goes|go)$/, ontoTheCourt], [/^(drops?|leaves?|moves?|gets?|wraps?|shovels?|floats?|slips?|lays?|slides?|whips?|loops?|works?|rifles?|pings?|hooks?|lofts?)$/, dropsIt],
];

const rulesOf = new Map<string, readonly (typeof RULES)[number][1][]>();

/** No line needs more. */
const MOST_REWORDED = 24;

/** The tokens of the plain line. Most lines hold nothing of the kind, and are given back as they are. */
export function reworded(tokens: Tokens, types: Types): Tokens {
  let said = tokens;
  let times = 0;
  for (let at = 0; at < said.length; at++) {
    const token = said[at]!;
    if (token.tokenType.name === 'STRING' || /PLAYER$/.test(token.tokenType.name)) continue;
    const word = token.image.toLowerCase();
    let rules = rulesOf.get(word);
    if (!rules) {
      rules = [...phrases.filter(({ begins }) => begins === undefined || begins.has(word)).map(({ apply }) => apply), ...RULES.filter(([begins]) => begins.test(word)).map(([, rule]) => rule)];
      // What coaches misspell is without end.
      if (rulesOf.size < 4000) rulesOf.set(word, rules);
    }
    for (const rule of rules) {
      const next = rule(said, at, types);
      if (next === undefined || ++times > MOST_REWORDED) continue;
      said = next;
      // What stands before may fit now: `to set a screen`.
      at = Math.max(-1, at - 2);
      break;
    }
  }
  return said;
}
