// What coaches say of the ball, its passes and its dribbles, that a line says in other words.
import { message, oneOf, type Message } from '../../message/message.ts';
import { endOf, endOfWords, reads, tried, written, type Broken } from './broken-line.ts';
import { isPlayer, type LineToken } from '../line-token.ts';
import { commaAfter, fromThere, inNumber, isAttacker, rewriting, unquoted, word, writing, type SaidOtherwise } from './saying.ts';
import { verbOf } from '../verbs.ts';

/** A fake moves nobody: it is left to a note, and what he does then stays. */
export function isAFake(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  // `2 ball fakes`
  const index = /^(ball|pump|shot|head)$/.test(word(tokens[broken.index])) ? broken.index + 1 : broken.index;
  if (!/^(fakes?|jabs?|feints?|pump-fakes?|shot-fakes?)$/.test(word(tokens[index]))) return undefined;
  const next = tokens.findIndex((token, i) => i > index && (token.image === 'and' || token.image === 'then' || token.image === ','));
  const begins = (token: LineToken, i: number): boolean => (next < 0 ? i > index + 1 && verbOf(token.image)?.number === 'singular' && verbOf(token.image)!.class === 'move' : i >= next && verbOf(token.image) !== undefined);
  const rest = tokens.findIndex(begins);
  const player = tokens[index - 1];
  const on = rest > 0 ? tried(broken, message('Write only "{words}"', { words: `${written(broken, index - 1)} ${written(broken, rest, tokens.length)}` }), [{ at: tokens[index]!.startOffset, to: tokens[rest]!.startOffset, text: '' }]) : undefined;
  const words = unquoted(fromThere(broken, index));
  // What he does behind the fake would be lost in a note.
  const whole = index === 1 && rest < 0 && isAttacker(player) ? `note ${written(broken, 0)} "${words}"` : undefined;
  const note = whole === undefined ? undefined : tried(broken, message('Write {words}', { words: whole }), [{ at: tokens[0]!.startOffset, to: endOfWords(broken), text: whole }]);
  const told = whole === undefined ? message('A fake is not drawn. Write it as a note, and what he does then as his action.') : message('A fake is not drawn. Write it as a note ({note}), and what he does then as his action.', { note: whole });
  return { code: 'unknown-word', from: index, to: index + 1, message: told, fixes: [on, note] };
}

/** `1 gets the ball back from 5` is 5's pass. */
export function getsTheBall(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  // `1 takes` is a shot until the hand-off comes.
  const index = /^hand[ -]?offs?$/.test(word(tokens[broken.index])) && broken.index === 2 ? 1 : broken.index;
  if (!/^(gets?|receives?|catches|catch|takes?)( it| the ball)?$/.test(word(tokens[index])) || index !== 1 || !isAttacker(tokens[0])) return undefined;
  if (/^catch/.test(word(tokens[index])) && /^(at|in|on)$/.test(word(tokens[index + 1]))) return { code: 'unknown-word', from: index, to: index + 1, message: message('Where he catches is said with the pass: "passes to {words}".', { words: `${written(broken, 0)} ${written(broken, index + 1, commaAfter(broken, index)).replace(/ (and|then) .*$/, '')}` }), fixes: [] };
  const from = tokens.findIndex((token, i) => i > index && i <= index + 4 && token.image === 'from');
  const passer = tokens[from + 1];
  const ofThePasser = (text: string): Message => message('Say it of the man who passes: "{text}".', { text });
  if (from < 0 || !isAttacker(passer)) return /^(gets?|receives?)( it| the ball)$/.test(word(tokens[index])) || (/^(gets?|receives?)$/.test(word(tokens[index])) && /^(ball|pass|it|hand[ -]?off)$/.test(word(tokens[index + 1]))) ? { code: 'unknown-word', from: index, to: index + 1, message: ofThePasser(`4 passes to ${written(broken, 0)}`), fixes: [] } : undefined;
  const isHandOff = tokens.slice(index, from).some((token) => /^hand[ -]?offs?$/.test(word(token)));
  const text = `${written(broken, from + 1)} ${isHandOff ? 'hands off' : 'passes'} to ${written(broken, 0)}`;
  return { code: 'unknown-word', from: index, to: index + 1, message: ofThePasser(text), fixes: [writing(broken, 0, from + 2, text)] };
}

/** `3 steps in and gets a handoff from 5`: it is 5 who hands off. */
export function getsAHandOff(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  const index = [broken.index, broken.index - 1, broken.index - 2].find((i) => i >= 2 && /^(gets?|receives?|takes?|catches|catch)( it| the ball)?$/.test(word(tokens[i])));
  if (index === undefined) return undefined;
  const from = tokens.findIndex((token, i) => i > index && i <= index + 4 && token.image === 'from');
  const joint = tokens.findLastIndex((token, i) => i < index && ['and', 'then', ','].includes(token.image));
  if (from < 0 || joint < 1 || !isAttacker(tokens[from + 1]) || !isAttacker(tokens[0])) return undefined;
  const noun = tokens.findIndex((token, i) => i > index && /^(hand[ -]?offs?|dho)$/.test(word(token)));
  const end = Math.max(from + 2, noun + 1);
  const text = `${written(broken, from + 1)} ${noun < 0 ? 'passes' : 'hands off'} to ${written(broken, 0)}`;
  const fix = tried(broken, message('Write ", {text}"', { text }), [{ at: endOf(tokens[joint - 1]!), to: endOf(tokens[end - 1]!), text: `, ${text}` }]);
  return { code: 'unknown-word', from: index, to: end, message: message('Say it of the man who gives the ball: "{text}".', { text }), fixes: [fix] };
}

/** `3 takes the handoff and turns the corner`, `1 comes back for a handoff from 4`: told of the man who gives it. */
export function theHandOffTold(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const noun = [index, index - 1, index + 1].find((i) => /^hand[ -]?offs?$/.test(word(tokens[i])));
  if (noun === undefined || !isAttacker(tokens[0])) return undefined;
  const giver = tokens[noun + 1]?.image === 'from' && isAttacker(tokens[noun + 2]) ? tokens[noun + 2] : undefined;
  const verb = noun - 1;
  const isFor = word(tokens[verb]) === 'for';
  if (!isFor && !/^(takes?|gets?|receives?|catches|catch)$/.test(word(tokens[verb]))) return undefined;
  const passed = isFor && isAttacker(tokens[verb - 1]) && /\boff$/.test(word(tokens[verb - 2])) ? tokens[verb - 1] : undefined;
  const receiver = tokens.slice(1, verb).findLast(isAttacker);
  const gives = `${(giver ?? passed ?? receiver)?.image ?? '5'} hands off to ${tokens[0]!.image}`;
  const told = message('A hand-off is told of the man who gives it: "{gives}". The taker comes by himself.', { gives });
  const found = { code: 'misplaced-word', from: verb, to: noun + (giver ? 3 : 1), message: told } as const;
  // `1 cuts off 4 for a hand-off to the rim`: with the ball he drives there.
  if (passed && !giver && verb <= 4) {
    const then = fromThere(broken, noun + 1).replace(/^(?:,|and|then)\s*/, '');
    return { ...found, fixes: tokens[noun + 1] === undefined ? [rewriting(broken, gives)] : [`${gives}, ${tokens[0]!.image} ${then}`, `${gives}, ${tokens[0]!.image} drives ${then}`].map((text) => rewriting(broken, text)) };
  }
  // `1 passes to 4 and follows his pass for the hand-off`
  const to = receiver === undefined ? -1 : tokens.indexOf(receiver);
  if (!giver && to > 1 && verbOf(word(tokens[1]))?.class === 'pass' && /^and follows? (?:his|her|the) pass for\b/i.test(broken.text.slice(endOf(receiver!)).trim()) && noun + 1 === tokens.length) {
    const line = `${written(broken, 0, to + 1)}, ${gives}`;
    // Where the hand-off is told in a line below, only what it is for goes.
    return { ...found, fixes: [rewriting(broken, line), tried(broken, message('Leave out "{words}"', { words: written(broken, verb, noun + 1) }), [{ at: endOf(tokens[verb - 1]!), to: endOf(tokens[noun]!), text: '' }])] };
  }
  const at = endOf(tokens[verb - 1]!);
  if (giver && isFor) return { ...found, fixes: [tried(broken, message('Write ", {gives}"', { gives }), [{ at, to: endOf(tokens[noun + 2]!), text: `, ${gives}` }])] };
  const joint = tokens[noun + 1];
  if (giver || !joint || !['and', 'then', ','].includes(joint.image) || !tokens[noun + 2]) return giver ? undefined : { ...found, fixes: [] };
  return { ...found, fixes: [tried(broken, message('Leave out "{words}"', { words: written(broken, verb, noun + 2) }), [{ at: tokens[verb]!.startOffset, to: tokens[noun + 2]!.startOffset, text: '' }])] };
}

export function ballGoesTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const ball = [index - 1, index - 2].find((i) => word(tokens[i]) === 'ball');
  if (ball === undefined || !/^(goes|is|comes|gets to)$/.test(word(tokens[ball + 1]))) return undefined;
  const player = tokens.findIndex((token, i) => i > ball + 1 && i <= ball + 3 && isAttacker(token));
  if (player >= 0) {
    const text = `${written(broken, player)} catches`;
    return { code: 'misplaced-word', from: ball, to: player + 1, message: message('Say it of the man who gets the ball: "{text}".', { text }), fixes: [writing(broken, ball, player + 1, text)] };
  }
  if (word(tokens[ball + 1]) === 'is') return undefined;
  const to = ball + 2 + (word(tokens[ball + 2]) === 'to' ? 1 : 0);
  return { code: 'misplaced-word', from: ball, to, message: message('The ball "reaches" a place: "when the ball reaches the right wing".'), fixes: [writing(broken, ball + 1, to, 'reaches')] };
}

/** `1 passes to 2 or 3`: whoever is open is a look. */
export function eitherReceiver(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const isWhoever = /^(whoever|whichever|whomever)$/.test(word(tokens[index]));
  const receivers = word(tokens[index]) === 'or' && (word(tokens[index - 2]) === 'to' || verbOf(word(tokens[index - 2]))?.class === 'pass') && isAttacker(tokens[index - 1]) && isAttacker(tokens[index + 1]);
  if (!isWhoever && !receivers) return undefined;
  const look = receivers ? `look ${written(broken, index - 1)} or ${written(broken, index + 1)}` : 'look 2 or 3';
  const isWhole = receivers && tokens.length === index + 2 && isAttacker(tokens[0]) && verbOf(word(tokens[1]))?.class === 'pass';
  return { code: isWhoever ? 'unknown-word' : 'misplaced-word', from: index, to: index + 1, message: message('Who is open is seen in the game: that is a look. For example: {look}.', { look }), fixes: isWhole ? [writing(broken, 0, tokens.length, look)] : [] };
}

/** `1 swings it to the weak side` */
export function passToAPlace(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const verb = tokens.slice(0, index).findLast((token) => verbOf(token.image) !== undefined);
  if (word(tokens[index - 1]) !== 'to' || verbOf(word(verb))?.class !== 'pass' || !broken.wanted.every(({ token }) => /PLAYER|him|them/.test(token))) return undefined;
  const place = written(broken, index, commaAfter(broken, index));
  if (!reads(`2 cuts to ${place}`)) return undefined;
  const isLook = word(tokens[0]) === 'look';
  const comma = commaAfter(broken, index);
  // The looker is there himself: `look 3: skip to the corner, three`.
  if (isLook && isAttacker(tokens[1]) && word(tokens[2]) === ':') {
    const at = /corner|gap|seam|lane$/.test(place) ? 'in' : 'on';
    const text = `look ${written(broken, 1)} ${at} the ${place.replace(/^the /i, '')}: ${written(broken, 3, index - 1)}${comma < tokens.length ? written(broken, comma, tokens.length) : ''}`;
    const fix = rewriting(broken, text);
    if (fix !== undefined) return { code: 'misplaced-word', from: index - 1, to: comma, message: message('Write "{text}".', { text }), fixes: [fix] };
  }
  const receiver = word(tokens[0]) === '3' ? '2' : '3';
  const joint = /corner|gap|seam|lane$/.test(place) ? 'in' : 'on';
  return { code: 'misplaced-word', from: index, to: index + 1, message: message('A pass goes to a man. Say who is there: "{words}".', { words: `${written(broken, index - 1)} ${receiver} ${joint} the ${place.replace(/^the /i, '')}` }), fixes: [] };
}

/** `1 probes`, `1 probes the lane`: a dribble, to somewhere. */
export function probes(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(probes?|snakes?)$/.test(word(tokens[index])) || !isAttacker(tokens[index - 1])) return undefined;
  const hasPlace = ['to', 'into'].includes(word(tokens[index + 1]));
  const end = hasPlace ? index + 1 : commaAfter(broken, index);
  const texts = hasPlace ? [inNumber(broken, index, 'dribbles')] : [inNumber(broken, index, 'keeps his dribble'), `${inNumber(broken, index, 'dribbles')} to the nail`];
  return { code: 'unknown-word', from: index, to: end, message: message('He dribbles and looks: write "{words}", or say where he goes ("dribbles to the nail").', { words: texts[0]! }), fixes: texts.map((text) => writing(broken, index, end, text)) };
}

/** `1 attacks 2 on 1 with 5` */
export function anOpponentsCount(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => isPlayer(tokens[i]) && word(tokens[i + 1]) === 'on' && isPlayer(tokens[i + 2]));
  const verb = at === undefined ? undefined : verbOf(word(tokens[at - 1]));
  if (at === undefined || (verb?.class !== 'dribble' && verb?.class !== 'move' && !/^plays?$/.test(word(tokens[at - 1])))) return undefined;
  const text = `${inNumber(broken, at - 1, 'drives')} to the rim`;
  return { code: 'misplaced-word', from: at - 1, to: at + 3, message: message('How many defenders are left is seen in the game. Say where he goes: "{text}"; whom he may pass to is a look.', { text }), fixes: [writing(broken, at - 1, commaAfter(broken, at), text)] };
}

/** `3 dribbles at the defence` */
export function atTheDefence(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  // `at the top man`: in front of a zone stands X1.
  const man = [index, index - 1].find((i) => /^(man|defender|guy)$/.test(word(tokens[i])) && /^(top|front|point|first)$/.test(word(tokens[i - 1])) && /^(at|to|toward)$/.test(word(tokens[i - 2])) && verbOf(word(tokens[i - 3]))?.class === 'dribble');
  if (man !== undefined) return { code: 'misplaced-word', from: man - 2, to: man + 1, message: message('Say which defender he dribbles at, by his number: "{words}". Where each of a zone stands, the picture shows.', { words: 'at X1' }), fixes: [writing(broken, man - 2, man + 1, 'at X1')] };
  if (word(tokens[index - 1]) !== 'at' || !/^(defence|defense|defender|zone|press|trap|man|gap|gaps|seam|seams|hole|lane|baseline)$/.test(word(tokens[index]))) return undefined;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('Say where he dribbles to ("to top"), or at which of his own men ("at 2").'), fixes: [tried(broken, message('Write "to top"'), [{ at: tokens[index - 1]!.startOffset, to: endOf(tokens[index]!), text: 'to top' }])] };
}

/** `1 drives at the rim`: at a man, to a place. */
export function atForTo(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(at|on|in)$/.test(word(tokens[index - 1])) || verbOf(word(tokens[index - 2]))?.class !== 'dribble') return undefined;
  const fix = writing(broken, index - 1, index, 'to');
  return fix && { code: 'misplaced-word', from: index - 1, to: index, message: message('A dribble goes "to" a place: write "to".'), fixes: [fix] };
}

/** `3 steps in behind the ball` */
export function behindTheBall(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (word(tokens[index]) !== 'ball' || !/^(behind|beside|in front of|around|over)$/.test(word(tokens[index - 1]))) return undefined;
  const from = index - 1;
  return { code: 'misplaced-word', from, to: index + 1, message: message('Say which man has it then: "{words} 2".', { words: word(tokens[from]) }), fixes: ['1', '2', '3', '4'].filter((who) => who !== word(tokens[0])).slice(0, 3).map((who) => tried(broken, message('Write "{words} {who}"', { words: word(tokens[from]), who }), [{ at: tokens[from]!.startOffset, to: endOf(tokens[index]!), text: `${word(tokens[from])} ${who}` }])) };
}

/** `2 steps back to the top for safety` */
export function forSafety(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(for|as)$/.test(word(tokens[i])) && /^(safety|outlet|protection)$/.test(word(tokens[i + 1])));
  if (at === undefined || !isAttacker(tokens[0])) return undefined;
  const to = tokens.findLastIndex((token, i) => i < at && /^(to|at|on|in)$/.test(token.image));
  // `for safety near half court`
  const near = to < 0 && /^(near|at|around|by|in)$/.test(word(tokens[at + 2])) ? written(broken, at + 3, tokens.length) : '';
  const text = `${written(broken, 0)} is the safety${to < 0 ? (near === '' ? '' : ` at ${near}`) : ` at ${written(broken, to + 1, at)}`}`;
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('The safety is told in one line: "{text}". He gets the ball when the looks are passed up.', { text }), fixes: [rewriting(broken, text)] };
}

/** `1 hits 3 off the flare`: the ball comes to him as he does. */
export function passOffTheScreen(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const off = tokens.findIndex((token, i) => i >= index && i <= index + 1 && word(token) === 'off');
  if (off < 0 || (off > index && word(tokens[index]) !== 'coming') || !isAttacker(tokens[index - 1])) return undefined;
  const verb = tokens.slice(0, index).findLast((token) => verbOf(token.image) !== undefined);
  if (verbOf(word(verb))?.class !== 'pass') return undefined;
  const end = commaAfter(broken, off);
  const text = `as he comes ${written(broken, off, end)}`;
  return { code: 'misplaced-word', from: index, to: end, message: message('When the ball comes to him is said with "as": "{text}".', { text }), fixes: [writing(broken, index, end, text)] };
}

/** `1 takes one dribble to the right`: how many, the way says. */
export function countsHisDribbles(broken: Broken): SaidOtherwise | undefined {
  const { tokens } = broken;
  const verb = tokens.findIndex((token, i) => i > 0 && i <= broken.index && /^takes?$/.test(word(token)) && isAttacker(tokens[i - 1]));
  const noun = tokens.findIndex((token, i) => i > verb && i <= verb + 4 && /^dribbles?$/.test(word(token)));
  if (verb < 0 || noun < 0) return undefined;
  const joint = tokens.findIndex((token, i) => i > noun && [',', 'and', 'then'].includes(token.image));
  const end = joint < 0 ? tokens.length : joint;
  const where = written(broken, noun + 1, end);
  const side = /^(?:to )?(?:the |his )?(left|right)$/i.exec(where)?.[1];
  const places = side !== undefined ? [`to the ${side.toLowerCase()} elbow`, `to the ${side.toLowerCase()} wing`] : where === '' ? ['to the right elbow', 'to the left elbow'] : [where];
  const texts = places.map((place) => `${inNumber(broken, verb, 'dribbles')} ${place}`);
  return { code: 'unknown-word', from: verb, to: end, message: message('How many dribbles it takes follows from the way. Say where they end: {words}.', { words: oneOf(texts.map((text) => `"${text}"`)) }), fixes: texts.map((text) => writing(broken, verb, end, text)) };
}

/** `2 and 1 play catch`, `they swing it around`: which passes? */
export function playsCatch(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(plays?|trades?|exchanges?)$/.test(word(tokens[i])) && /^(catch|passes|ball)$/.test(word(tokens[i + 1])));
  if (at === undefined || at < 1) return undefined;
  const [one, other] = tokens.slice(0, at).filter(isAttacker).map(({ image }) => image);
  const words = `${one ?? '1'} passes to ${other ?? '2'}, ${other ?? '2'} passes to ${one ?? '1'}`;
  return { code: 'misplaced-word', from: at, to: at + 2, message: message('Each pass is said: "{words}".', { words }), fixes: [other === undefined ? undefined : tried(broken, message('Write "{words}"', { words }), [{ at: tokens[0]!.startOffset, to: endOf(tokens.at(-1)!), text: words }])] };
}

/** `4 slaps the ball`: the call. */
export function givesASignal(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  const at = [index, index - 1].find((i) => /^(slaps?|claps?|taps?|raises?|yells?|shouts?|signals?|whistles?)( the ball| it)?$/.test(word(tokens[i])) && isAttacker(tokens[i - 1]));
  if (at === undefined) return undefined;
  // `2 slaps the ball and 3 breaks to the corner`: what is done stays.
  const deed = tokens.findIndex((token, i) => i > at + 1 && isAttacker(token) && ['and', ',', 'then'].includes(word(tokens[i - 1])));
  const words = written(broken, 0, deed < 0 ? tokens.length : deed - 1).replaceAll(/["“”]/g, '');
  if (deed > 0) return { code: 'unknown-word', from: at - 1, to: deed, message: message('A signal moves nobody: the first lines of the first step begin with it. Keep it as a note in a line of its own: note "{words}".', { words }), fixes: [tried(broken, message('Leave out "{words}"', { words: written(broken, 0, deed) }), [{ at: tokens[0]!.startOffset, to: tokens[deed]!.startOffset, text: '' }])] };
  return { code: 'unknown-word', from: at, to: at + 1, message: message('A signal moves nobody: the first lines of the first step begin with the call, or as the thrower gets the ball. Keep it as a note.'), fixes: [writing(broken, 0, tokens.length, `note "${words}"`)] };
}

/** `hits the roller`, `screens the screener`: who is that? */
export function whoIsThat(broken: Broken): SaidOtherwise | undefined {
  const { tokens, index } = broken;
  if (!/^(roller|screener|cutter|shooter|passer|dribbler|ball-handler|handler|popper|inbounder|post|point|trailer|rollers|cutters|open man|guard|big|center|centre)$/.test(word(tokens[index])) || index < 2 || word(tokens[0]) === 'from') return undefined;
  if (!['pass', 'screen', 'hand-off', 'move'].includes(verbOf(word(tokens[index - 1]))?.class ?? '') && !/^(to|for|off|into)$/.test(word(tokens[index - 1]))) return undefined;
  return { code: 'unknown-word', from: index, to: index + 1, message: message('Say which man that is, by his number: “{words}” could be several.', { words: written(broken, index) }), fixes: [] };
}
