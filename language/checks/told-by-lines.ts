// What is wrong with a line by itself. Its words come with the fault, because they depend on the words around it; here stand severity and
// manual. Complete by type.
import type { LineWarning } from '../grammar/mending/agreement.ts';
import type { FaultCode } from '../grammar/line-fault.ts';
import type { Entry, Manual } from './check.ts';
import type { Severity } from './finding.ts';
import type { toldByReading } from './told-by-reading.ts';

type LineCode = FaultCode | LineWarning['code'];

function line<const Code extends LineCode>(code: Code, manual: Manual, severity: Severity = 'error'): Entry<Code, '{message}'> {
  return { code, severity, needs: 'line', message: '{message}', source: 'the words of the notation', manual };
}

const costsOneLine = 'A line that cannot be read costs that line and nothing else: the rest of the play is shown as it is.';

export const toldByLines = {
  'unknown-word': line('unknown-word', { title: 'A word that is not known here', why: `Mostly a slip of the pen; the nearest word that fits is offered. ${costsOneLine}`, wrong: '1 dribles to left slot\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }),
  'misplaced-word': line('misplaced-word', { title: 'A word that does not fit where it stands', why: costsOneLine, wrong: '1 dribbles to left slot\n3 cuts of 1 to top\nlook 1: jumper', right: '1 dribbles to left slot\n3 cuts off 1 to top\nlook 1: jumper' }),
  'missing-word': line('missing-word', { title: 'A word is missing', why: 'A small word such as `to`, `for` or `off` says what the next one is: a receiver, a user of the screen, a screener.', wrong: '1 passes 2\nlook 2: jumper', right: '1 passes to 2\nlook 2: jumper' }),
  'extra-word': line('extra-word', { title: 'A word too many', why: costsOneLine, wrong: '1 dribbles to to left slot\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }),
  'word-order': line('word-order', { title: 'Two words the wrong way round', why: costsOneLine, wrong: '3 cuts to wing left\n1 passes to 3\nlook 3: jumper', right: '3 cuts to left wing\n1 passes to 3\nlook 3: jumper' }),
  'line-unfinished': line('line-unfinished', { title: 'A line that just stops', why: 'It is probably still being typed.', wrong: '1 dribbles to\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }),
  'open-quote': line('open-quote', { title: 'A quote that is never closed', why: 'Names and remarks stand between two quotes.', wrong: '1 dribbles to left slot\nlook 1 "pull-up: jumper', right: '1 dribbles to left slot\nlook 1 "pull-up": jumper' }),
  'name-without-quotes': line('name-without-quotes', { title: 'A name without quotes', why: 'Names of your own stand in quotes, so that a slip of the pen is never taken for one.', wrong: 'step Zip\n1 dribbles to left slot\nlook 1: jumper', right: 'step "Zip"\n1 dribbles to left slot\nlook 1: jumper' }),
  'no-such-player': line('no-such-player', { title: 'A player who does not exist', why: 'The offence is 1 to 5, the defence X1 to X5.', wrong: '6 dribbles to left slot\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }),
  'verb-first': line('verb-first', { title: 'The player comes first', why: 'A line says who, then what: `1 passes to 5`.', wrong: 'pass 1 to 5\nlook 5: layup', right: '1 passes to 5\nlook 5: layup' }),
  'who-does-it': line('who-does-it', { title: 'It is not clear who', why: 'Behind `passes to 2` a verb could be 1’s or 2’s.', wrong: '1 passes to 2 cuts to rim\nlook 2: jumper', right: '1 passes to 2 and cuts to rim\nlook 2: jumper' }),
  'noun-for-verb': line('noun-for-verb', { title: 'The kind of screen is the verb', why: '`4 ball-screens for 1` says in one word what `hurries into a ball screen for 1` says in four.', wrong: '4 hurries into a ball screen for 1\n1 drives off 4 to rim\nlook 1: layup', right: '4 ball-screens for 1\n1 drives off 4 to rim\nlook 1: layup' }),
  'unit-missing': line('unit-missing', { title: 'A number without its unit', why: 'Otherwise 1 to 5 are players.', wrong: 'leave 4\n1 dribbles to left slot\nlook 1: jumper', right: 'leave 4 seconds\n1 dribbles to left slot\nlook 1: jumper' }),
  'line-too-long': line('line-too-long', { title: 'A line longer than any play needs', why: 'Lines of more than 2,000 characters are not read: put each action on its own line.' }),
  'line-not-read': line('line-not-read', { title: 'A line that cannot be read', why: costsOneLine }),
  'not-drawn': line('not-drawn', { title: 'Words that nothing is drawn of', why: 'What for and how a man does something, the players are told; on the floor the play is the same without it.', wrong: '1 dribbles to left slot to keep his man busy\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }, 'hint'),
  'words-not-read': line('words-not-read', { title: 'Words that are passed over', why: 'The rest of the line can be read, so the play goes on with it. Where the words mean something, say it in a line of its own.', wrong: '1 dribbles to left slot by the scorers\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }, 'warning'),
  'read-as': line('read-as', { title: 'A verb read by what stands behind it', why: 'There are more verbs than any list has. Who does something to the corner goes there, who does something with it to 3 passes to him. A verb of the list says more: how fast, and which way.', wrong: '1 dribbles to left slot\n3 slithers to left wing\nlook 1: jumper', right: '1 dribbles to left slot\n3 drifts to left wing\nlook 1: jumper' }, 'hint'),
  'read-as-a-remark': line('read-as-a-remark', { title: 'A condition read as a remark', why: 'What brings a counter about is a sentence about a defender, who then does it, or a remark in quotes that is only shown. A sentence that names no defender by his number is taken for a remark, so that the step keeps its place among the others. Of a look such a sentence is what it is called by: whether it is so is seen in the game.', wrong: 'step "Open"\n1 dribbles to left slot\nlook 1: jumper\nstep "Round" instead of "Open" when they go zone\n1 dribbles to top\nlook 1: three', right: 'step "Open"\n1 dribbles to left slot\nlook 1: jumper\nstep "Round" instead of "Open" when "they go zone"\n1 dribbles to top\nlook 1: three' }, 'hint'),
  'verb-number': line('verb-number', { title: 'Singular or plural', why: 'Both are read; one player cuts, several cut.', wrong: '1 dribble to left slot\nlook 1: jumper', right: '1 dribbles to left slot\nlook 1: jumper' }, 'hint'),
} as const satisfies { readonly [Code in Exclude<LineCode, keyof typeof toldByReading>]: Entry<Code> };
