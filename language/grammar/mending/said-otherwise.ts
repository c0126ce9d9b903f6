// Words that coaches use and no line can say so: what can be written instead.
import { message } from '../../message/message.ts';
import { endOf, startWithArticles, tried, written, type Broken } from './broken-line.ts';
import { isAttacker, word, writing, type Recogniser, type SaidOtherwise } from './saying.ts';
import { headsInFreeWords } from './heads-in-free-words.ts';
import { twoLinesInOne } from './two-lines-in-one.ts';
import { saidByASlip } from './said-by-a-slip.ts';
import { saidInOtherHeadWords } from './said-in-other-head-words.ts';
import { saidOfHeads } from './said-of-heads.ts';
import { saidOfLooks } from './said-of-looks.ts';
import { saidOfPassesToLooks } from './said-of-passes-to-looks.ts';
import { withoutItsWord } from './said-without-its-word.ts';
import { saidInTradeNames } from './said-in-trade-names.ts';
import { saidOfPlayers } from './said-of-players.ts';
import { inAPhrase } from './said-in-a-phrase.ts';
import { icesTheScreen, whichZone, whereItIsSoft, betweenWhom, picksUpAMan, drawsTwo, fouls, makesOrMisses, shootsAFreeThrow, guardsHim, comesOutTo, boxAndOne, runsTheClockDown } from './said-of-defence.ts';
import { passesAway, takesHisMan, upTheSideline, oppositeOfWhat, fillsALane, anOpenPlace, someonesSpot, clearsASide, highOrLow, andOutTo, facesUp, rotatesASpot, whichWay } from './said-of-moves.ts';
import { getsAScreen, setsAnAdjectiveScreen, pickAndRoll, refuses, offMissing, doublesFor, oneThenTheOther, whichOfTheZone, pins, aGate, shutsTheGate } from './said-of-screens.ts';
import { isAFake, getsTheBall, getsAHandOff, theHandOffTold, ballGoesTo, eitherReceiver, passToAPlace, probes, anOpponentsCount, atTheDefence, atForTo, behindTheBall, forSafety, passOffTheScreen, countsHisDribbles, givesASignal, playsCatch, whoIsThat } from './said-of-the-ball.ts';
import { dependsOnTheDefence, before, onTheCatch, onTheSignal, waitsWithoutFor, waitsForAScreen, countsTo, choosesLater, onHisHeels, onWhatADefenderDoes, waitsWhenSpokenTo, whileTheZone } from './said-of-waits.ts';

/** In the order in which they are tried: the first that fits speaks. */
const RECOGNISERS: readonly Recogniser[] = [
  ...saidByASlip, ...twoLinesInOne, ...saidOfHeads, ...saidInOtherHeadWords, ...headsInFreeWords, ...withoutItsWord, ...saidOfPassesToLooks, ...saidOfLooks, ...saidOfPlayers, ...saidInTradeNames, inAPhrase, betweenWhom, whereItIsSoft,
  fouls, makesOrMisses, shootsAFreeThrow, guardsHim, comesOutTo, boxAndOne, runsTheClockDown, passesAway, pickAndRoll, getsAScreen, setsAnAdjectiveScreen,
  icesTheScreen, pins, countsHisDribbles, passOffTheScreen, rotatesASpot, probes, theHandOffTold, anOpponentsCount, drawsTwo, upTheSideline, behindTheBall, oppositeOfWhat, refuses, offMissing,
  onTheSignal, whichWay, onHisHeels, onWhatADefenderDoes, whileTheZone, forSafety, getsAHandOff, passToAPlace, whichOfTheZone, fillsALane, atTheDefence, anOpenPlace, someonesSpot, aGate,
  shutsTheGate,
  waitsWhenSpokenTo, dependsOnTheDefence, before, onTheCatch, waitsWithoutFor, waitsForAScreen, isAFake, getsTheBall, takesHisMan, oneThenTheOther,
  ballGoesTo, startsAt, whichZone, eitherReceiver, doublesFor, clearsASide, picksUpAMan, countsTo, highOrLow, theBigs, placesWithoutFrom,
  choosesLater, whoIsThat, playsCatch, givesASignal, andOutTo, facesUp, atForTo,
];

/** The first of the sayings that fits. Each mend keeps what the coach meant; where none can, the message says what can be written. */
export function saidOtherwise(broken: Broken): SaidOtherwise | undefined {
  for (const recognise of RECOGNISERS) {
    const found = recognise(broken);
    if (found) return found;
  }
  return undefined;
}

function startsAt(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (index !== 0 || !/^(start|starts|begin|run|go)$/.test(word(tokens[0])) || word(tokens[1]) !== 'at') return undefined;
  const fix = writing(broken, 0, 2, 'call with');
  return fix && { code: 'misplaced-word', from: 0, to: 2, message: message('When a play is called, its "call" line says: "call with {words}".', { words: written(broken, 2, tokens.length) }), fixes: [fix] };
}

function theBigs(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^bigs$/.test(word(tokens[i])));
  if (at === undefined) return undefined;
  return { code: 'unknown-word', from: at, to: at + 1, message: message('Say the players by their numbers: "4 and 5".'), fixes: [tried(broken, message('Write "4 and 5"'), [{ at: startWithArticles(broken, at), to: endOf(tokens[at]!), text: '4 and 5' }])] };
}

/** `1 at the left slot, 5 on the left block`: where a play starts is its `from` line. */
function placesWithoutFrom(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  if (!isAttacker(tokens[0]) || broken.index < 3) return undefined;
  const fix = tried(broken, message('Put "from" before it'), [{ at: tokens[0]!.startOffset, to: tokens[0]!.startOffset, text: 'from ' }]);
  return fix && { code: 'missing-word', from: 0, to: 1, message: message('Where the five stand at the start is the "from" line of the play: put "from" before it.'), fixes: [fix] };
}
