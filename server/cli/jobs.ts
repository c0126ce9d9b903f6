// `setwright jobs FILE…`: what each player has to do, to be handed to him.
import type { Command } from 'commander';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import type { Compiled } from '../../language/compile.ts';
import { sayTenths } from '../../language/words/say-seconds.ts';
import type { Job, JobsOfPlayer } from '../../language/words/job.ts';
import { tellJobs } from '../../language/words/tell-jobs.ts';
import { CallError } from './call-error.ts';
import { readFiles } from './files.ts';
import { remarkOnLinesNotRead } from './lines-not-read.ts';
import { openBook } from './open-book.ts';
import { playsInOrder } from './plays-named.ts';
import { withExamples } from './examples.ts';
import { print } from './terminal.ts';

interface JobsOptions {
  readonly play?: string;
  readonly player?: string;
}

export function addJobs(program: Command): void {
  const command = program
    .command('jobs')
    .argument('<files...>', 'files, folders, patterns; - reads standard input')
    .option('--play <name>', 'only the play of this name')
    .option('--player <who>', 'only this player’s: 1 to 5, or a name of the roster')
    .summary('each player’s own jobs')
    .description('Prints what each player has to do: where he starts, his jobs in each step and each counter, his looks, and what comes after the shot; in front of each how many seconds after the call it typically begins, of a look of his when the ball leaves his hand. Figures of a model, not a promise: time your own team.')
    .action((names: string[], options: JobsOptions) => {
      const plays = playsInOrder(openBook(readFiles(names)), options.play);
      remarkOnLinesNotRead(plays);
      const told = plays.map(({ file, play }) => ({ play, jobs: tellJobs(file.named(play).play, play.timeline) }));
      const wanted = options.player?.trim();
      const chosen = told.map(({ play, jobs }) => ({ play, jobs: wanted === undefined ? jobs : jobs.filter((one) => isMeant(one, wanted)) })).filter(({ jobs }) => jobs.length > 0);
      if (chosen.length === 0) throw new CallError(noSuchPlayer(wanted ?? '', told.flatMap(({ jobs }) => jobs)));
      print(chosen.map(({ play, jobs }) => jobsText(play, jobs)).join('\n\n'));
    });
  withExamples(command, 'setwright jobs examples/lighthouse.play', 'setwright jobs plays --play "Lighthouse" --player 3');
}

const isMeant = ({ who, name }: JobsOfPlayer, wanted: string): boolean => who === wanted || name?.toLowerCase() === wanted.toLowerCase();

function noSuchPlayer(wanted: string, all: readonly JobsOfPlayer[]): string {
  const names = [...new Set(all.flatMap(({ name }) => name ?? []))];
  const near = nearestWord(wanted, names);
  if (near !== undefined) return `There is no player called "${wanted}". Did you mean "${near}"?`;
  return `There is no player ${wanted}. A player is a number from 1 to 5${names.length === 0 ? ', or the name a roster gives to one of them.' : `, or one of these: ${names.join(', ')}.`}`;
}

function jobsText({ play }: Compiled, players: readonly JobsOfPlayer[]): string {
  const title = `${play.name} (${play.level.value}, seconds ${play.start.throwIn === undefined ? 'from the call' : 'from the hand-over'}, typically)`;
  return [title, ...players.map(({ who, name, jobs }) => ['', `  ${who}${name === undefined ? '' : ` ${name}`}`, ...jobs.map(jobLine)].join('\n'))].join('\n');
}

/** Under the head of its step, behind its time. */
function jobLine({ text, at, head }: Job): string {
  return head === true ? `    ${text}` : `    ${(at === undefined ? '' : sayTenths(at)).padStart(6)}  ${text}`;
}
