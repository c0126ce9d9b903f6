// What is wrong with a call, in a sentence: commander's own messages speak to programmers.
import type { Command, CommanderError } from 'commander';
import { existsSync } from 'node:fs';
import { nearestWord } from '../../language/checks/nearest-word.ts';
import { exampleOf } from './examples.ts';

/** What each command needs to be told, when it is missing. */
const needed: Readonly<Record<string, string>> = {
  files: 'which files or folders',
  file: 'which file',
};

/** What a coach may call a command that has another name. */
const otherWords: Readonly<Record<string, string>> = {
  lint: 'check', validate: 'check', test: 'check', verify: 'check', times: 'time', clock: 'time', show: 'page', html: 'page', print: 'page', pdf: 'page', web: 'page', animate: 'page', play: 'page', watch: 'page --watch',
  svg: 'draw', picture: 'draw', image: 'draw', diagram: 'draw', plays: 'list', ls: 'list', diff: 'compare', changes: 'compare', create: 'new', add: 'new', init: 'new', start: 'new', why: 'explain', manual: 'explain', server: 'lsp',
};

/** The sentence for a call that commander refuses. `command` is the one that was called, the program itself if none was. */
export function wrongCall(program: Command, error: CommanderError): string {
  const { code, message } = error;
  const quoted = /'([^']*)'/.exec(message)?.[1] ?? '';
  const first = process.argv.slice(2).find((word) => !word.startsWith('-'));
  const called = program.commands.find((one) => one.name() === first);
  const name = called === undefined ? 'setwright' : `setwright ${called.name()}`;
  switch (code) {
    case 'commander.missingArgument':
      return `Say ${needed[quoted] ?? quoted}. For example: ${exampleOf(called ?? program)}`;
    case 'commander.unknownCommand': {
      // `setwright plays/lighthouse.play`
      if (quoted.endsWith('.play') || existsSync(quoted)) return `Say what to do with ${quoted}. For example: setwright check ${quoted}`;
      const near = otherWords[quoted.toLowerCase()] ?? nearestWord(quoted, program.commands.map((one) => one.name()));
      return `There is no command ${quoted}.${near === undefined ? '' : ` Did you mean ${near}?`} "setwright --help" lists them all.`;
    }
    case 'commander.unknownOption': {
      const near = nearestWord(quoted, (called ?? program).options.flatMap(({ long }) => long ?? []));
      return `${name} has no option ${quoted}.${near === undefined ? '' : ` Did you mean ${near}?`} "${name} --help" lists them.`;
    }
    case 'commander.optionMissingArgument':
      return `${quoted} needs a word behind it. "${name} --help" says which.`;
    case 'commander.excessArguments':
      return `${name} takes ${called?.registeredArguments.length === 2 ? 'two names, the older version first' : 'one name at a time'}; names with blanks stand in quotes. For example: ${exampleOf(called ?? program)}`;
    case 'commander.conflictingOption': {
      const [one, other] = [...message.matchAll(/'[^']*?(--[\w-]+)[^']*'/g)].map(([, option]) => option);
      return `${one} and ${other} are two forms of the same: ask for one of them.`;
    }
    case 'commander.invalidArgument':
      return sayInvalid(message);
    default:
      return message.replace(/^error: /, '');
  }
}

/** `option '--color <when>' argument 'maybe' is invalid. Allowed choices are auto, always, never.` */
function sayInvalid(message: string): string {
  const [, option, given, why = ''] = /^error: option '(?:-\w, )?(--[\w-]+).*?' argument '(.*)' is invalid\. (.*)$/s.exec(message) ?? [];
  if (option === undefined) return message.replace(/^error: /, '');
  const choices = /^Allowed choices are (.*)\.$/.exec(why)?.[1];
  return choices === undefined ? `${option} ${given}: ${why}` : `${option} is one of ${choices}, not "${given}".`;
}
