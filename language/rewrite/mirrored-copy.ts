import { message } from '../message/message.ts';
import { freshName, lastSaid, linesBehind, proved, type Here, type Offer } from './here.ts';
import { isHead } from './steps.ts';

/** A play that mirrors this one, and follows it when it is changed. */
export function mirroredCopy(here: Here): Offer | undefined {
  if (!isHead(here)) return undefined;
  const { name } = here.reading.play;
  const write = () => {
    const before = JSON.stringify(here.reading.play);
    const lines = ['', `play "${freshName(here, 'play', `${name}, mirrored`)}" mirrors "${name}"`];
    return proved(here, [linesBehind(here, lastSaid(here, 0), lines)], ({ play }) => JSON.stringify(play) === before, message('Give this play a name first.'));
  };
  return { id: 'mirrored-copy', title: message('Add “{name}” mirrored, as a play of its own', { name }), kind: 'extract', write };
}
