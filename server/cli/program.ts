// The commands of `setwright` and their help; what runs them is main.ts.
import { Command } from 'commander';
import { addCheck } from './check.ts';
import { addCompare } from './compare.ts';
import { addDraw } from './draw.ts';
import { addExplain } from './explain.ts';
import { addJobs } from './jobs.ts';
import { addList } from './list.ts';
import { addLsp } from './lsp.ts';
import { addNew } from './new.ts';
import { addPage } from './page.ts';
import { addTime } from './time.ts';
import { withExamples } from './examples.ts';

export function createProgram(version: string): Command {
  const program = new Command('setwright')
    .description('Reads basketball plays written in a coach’s words: says what can’t work, when to call them, and shows them moving.')
    .version(version)
    // Said in main.ts, in our own words.
    .configureOutput({ outputError: () => {} })
    .exitOverride();
  withExamples(program, 'setwright check plays', 'setwright time plays --play "Lighthouse"', 'setwright page plays/lighthouse.play', 'setwright new plays/tide.play --name "Tide"', 'setwright explain screen-with-ball');
  for (const add of [addCheck, addTime, addCompare, addPage, addJobs, addDraw, addList, addNew, addExplain, addLsp]) add(program);
  // A command made before `exitOverride` would end the process itself.
  for (const command of program.commands) command.exitOverride();
  return program;
}
