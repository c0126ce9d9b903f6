// Phrases of coaches that one line says with other words: what is said, and what is written in its place.
import { message, type Message } from '../../message/message.ts';
import { tried, type Broken } from './broken-line.ts';
import { inNumber, type SaidOtherwise } from './saying.ts';

/**
 * The words said, as they stand in the line, behind who does it; what is written for them (`$1` is the first group), in the singular; and why.
 * Common usage, no source.
 */
const PHRASES: readonly (readonly [said: RegExp, instead: string, why: Message])[] = [
  [/\bmakes?(?: an?)?(?: (?:hard|quick|sharp|straight))?(?: (?:basket|rim)[ -]cut| cut to the (?:basket|rim))\b/i, 'basket-cuts', message('A cut is said with its verb.')],
  [/\bmakes?(?: an?)?(?: (?:hard|quick|sharp))? (?:back|backdoor)[ -]?cut\b/i, 'back-cuts', message('A cut is said with its verb.')],
  [/\bmakes?(?: an?)? (shallow|straight|v|l)[ -]cut\b/i, '$1-cuts', message('A cut is said with its verb.')],
  [/\bmakes?(?: an?)?(?: (?:hard|quick|sharp))? cut\b/i, 'cuts', message('A cut is said with its verb.')],
  [/\bdrags? (?:it|the ball)(?: back)? out\b/i, 'pulls it out', message('To drag the ball out is to pull it out.')],
  [/\boff (?:an? |the )?(?:staggered?|double)(?: screens?)? (?:from|by|of) (\d) and(?: then)? (\d)/i, 'off $1 then $2', message('Whom he comes off stands in the order in which he meets them.')],
  [/\bgets? (?:it|the ball) in to (\d)/i, 'inbounds to $1', message('From out of bounds the ball is inbounded.')],
  [/\bchas(?:es|e) (?:it|(?:his|the) pass|(?:the )?ball)\b/i, 'cuts to the ball', message('Who follows his pass goes to the ball.')],
  [/\bsteps? (?:on|onto|on to|into) (?:the )?(?:court|floor)\b/i, 'steps in', message('A thrower who comes on to the floor steps in.')],
  [/\b(?:in)?to (?:the |a )?(?:gap|seam|soft spot|hole)(?: (?:in|of) the zone)? (?:at|in|on|by)\b/i, 'to', message('Where the gap is, the place says.')],
  [/\bdrags? for (\d)/i, 'drag-screens for $1', message('A drag is a ball screen in the open floor.')],
  [/\bpitch(?:es)? (?:it|the ball) ahead to (\d)/i, 'passes ahead to $1', message('Ahead goes a pass; a pitch is a hand-off.')],
  [/\bgives? and (?:goes|go) with (\d)/i, 'passes to $1, then basket-cuts', message('To give and go is a pass and a cut to the rim.')],
  [/\bfills? up\b/i, 'fills the open spot', message('Who fills up takes the next empty spot.')],
  [/\bflattens?(?: out)?\b/i, 'drifts', message('To flatten out is to drift towards the baseline.')],
  [/\bducks? into\b/i, 'seals at', message('Who ducks in holds his man behind him: a seal.')],
  [/\b(?:isolates?|isos?)\b/i, 'keeps his dribble', message('Alone with his man he first keeps his dribble; the others clear.')],
  [/\b(?:rim[ -]runs?|runs[ -]to[ -]the[ -]rim)\b/i, 'dives', message('To run to the rim is a dive.')],
  [/\b(?:sets?(?: an?)? )?ghosts?(?:[ -]screens?)?(?: for \d)?\b/i, 'slips', message('A screen that is never set is a slip.')],
  [/\b(?:opens(?: up)?|open up)(?: to the ball)?\b/i, 'seals', message('To open up is to turn and show the hands.')],
  [/\b(?:spaces out|spreads?)\b(?! (?:in)?to | along | toward)/i, 'spaces', message('Say "spaces", or where to.')],
  [/\b(?:gets?|goes|gets? down) into the (?:paint|lane|key)\b/i, 'cuts to the lane', message('With the ball he "drives to the lane", without it he "cuts to the lane".')],
  [/\bbehind the (screen|pick|flare|stagger)\b/i, 'off the $1', message('Who gets open behind a screen comes off it.')],
  [/\bin the short roll\b/i, 'on the nail', message('A short roll ends at the free-throw line.')],
  [/\bside(?:line)? out of bounds\b/i, 'sideline throw-in', message('From the side the ball is thrown in.')],
  [/\bshows? (?:only )?(?:the |a )?(?:block|screen|pick)(?: only)?(?:,? and|,|,? then) cuts? (?:direct(?:ly)? |straight )?to\b/i, 'slips to', message('A screen that is never set is a slip.')],
  [/\bbeats? (?:them|everyone|everybody|x[1-5]|(?:his|her|the) (?:man|girl|defenders?|press|defen[cs]e)) (?:up|down) the (left |right )?sideline\b/i, 'dribbles down the $1sideline', message('Who beats his man with the ball dribbles past him.')],
  [/\bshort[ -]rolls? to\b/i, 'rolls to', message('A short roll is a roll that stops where you say.')],
  [/\bshort[ -]rolls?\b/i, 'rolls to the nail', message('A short roll stops at the free-throw line.')],
  [/\bdrops? back as the safety\b/i, 'is the safety', message('The safety is told in one line. He gets the ball when the looks are passed up.')],
  [/\b(?:chases|fights|comes|trails|goes) over(?: the)? top of (\d)/i, 'goes over $1', message('A defender goes over a screener, or under him.')],
];

export function inAPhrase(broken: Broken): SaidOtherwise | undefined {
  let without: SaidOtherwise | undefined;
  for (const [said, instead, why] of PHRASES) {
    const found = said.exec(broken.text);
    if (found === null) continue;
    const end = found.index + found[0].length;
    const from = broken.tokens.findIndex(({ startOffset }) => startOffset >= found.index);
    // `up to` is one word to the reader of lines, of which a phrase may end with `up`.
    const to = broken.tokens.findLastIndex(({ startOffset }) => startOffset < end) + 1;
    if (from < 1 || to <= from) continue;
    const text = inNumber(broken, from, found[0].replace(said, instead));
    const fix = tried(broken, message('Write "{words}"', { words: text }), [{ at: broken.tokens[from]!.startOffset, to: end, text }]);
    const told: SaidOtherwise = { code: 'unknown-word', from, to, message: message('{why} Write "{text}".', { why, text }), fixes: fix === undefined ? [] : [fix] };
    if (fix !== undefined) return told;
    // Something else in the line is not read either.
    without ??= told;
  }
  return without;
}
