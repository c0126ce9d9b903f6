// Plays that broke a law when the laws were run on thousands of them, cut down to what broke it. They stay, whatever the laws come upon next.
import { describe, expect, it } from 'vitest';
import type { FloorLaw } from '../support/floor-laws.ts';
import { floorLaws } from '../support/floor-laws.ts';

const found: readonly { readonly law: FloorLaw; readonly level: string; readonly play: readonly string[] }[] = [
  { law: 'mirror', level: 'u14', play: ['from diamond, ball with 1', '  5 ball-screens for 4, 4 drives off 5 to top'] },
  { law: 'mirror', level: 'u14', play: ['from 3-out 2-in, ball with 1', '  5 screens for 4', '  4 screens across for 1, then rolls'] },
  { law: 'mirror', level: 'u14', play: ['from diamond, ball with 1', '  1 ball-screens for 4, 4 drives off 1 to rim'] },
  { law: 'mirror', level: 'hs', play: ['from 1-3-1, ball with 1', '  1 bounce-passes to 3', '  3 dribbles to rim', '  1 ball-screens for 3, then rolls, 3 drives off 1 to rim'] },
  { law: 'mirror', level: 'u10', play: ['from 2-3 high, ball with 1', '  1 dribbles to rim', '  2 screens across for 5, 5 cuts off 2 to rim'] },
  { law: 'mirror', level: 'hs', play: ['from line, ball with 1', '  2 screens across for 3', '  3 screens for 1, then rolls'] },
  { law: 'mirror', level: 'u14', play: ['from 2-3 high, ball with 1', '  1 passes to 5', '  1 ball-screens for 5, 5 drives off 1 to rim', '  2 ball-screens for 5, then rolls, 5 drives off 2 to rim'] },
  { law: 'mirror', level: 'pro', play: ['from horns, ball with 1', '  2 ball-screens for 1, then rolls, 1 drives off 2 to right block', '  3 screens across for 4', '  4 screens across for 2, then rolls'] },
  { law: 'mirror', level: 'hs', play: ['from diamond, ball with 1', '  5 ball-screens for 1, 1 drives off 5 to rim'] },
  { law: 'mirror', level: 'u14', play: ['from stack, ball with 1', '  4 screens for 5, then rolls', '  3 screens down for 1', 'step "S2"', '  1 screens for 4'] },
  { law: 'mirror', level: 'hs', play: ['from 2-1-2, ball with 1', '  1 dribbles to rim', '  2 screens for 5, 5 cuts off 2 to nail'] },
  { law: 'mirror', level: 'hs', play: ['from 1-3-1, ball with 1', '  5 screens down for 1, then rolls'] },
  { law: 'mirror', level: 'hs', play: ['from 3-out 2-in, ball with 1', '  3 ball-screens for 1, 1 drives off 3 to top', '  2 screens across for 3, 3 cuts off 2 to nail'] },
  { law: 'mirror', level: 'u14', play: ['from diamond, ball with 1', '  1 hands off to 4'] },
  { law: 'mirror', level: 'hs', play: ['from diamond, ball with 1', '  4 back-screens for 1'] },
  { law: 'mirror', level: 'u10', play: ['from diamond, ball with 1', '  1 hands off to 4'] },
  { law: 'mirror', level: 'hs', play: ['from line, ball with 1', '  1 dribbles to rim', '  3 ball-screens for 1, then rolls, 1 drives off 3 to rim'] },
  { law: 'mirror', level: 'pro', play: ['from diamond, ball with 1', '  1 hands off to 4'] },
  { law: 'mirror', level: 'pro', play: ['from diamond, ball with 1', '  4 ball-screens for 1, 1 drives off 4 to nail'] },
  { law: 'mirror', level: 'pro', play: ['from 2-3 high, ball with 1', '  1 drives to rim', '  2 ball-screens for 1, then rolls, 1 drives off 2 to rim'] },
  { law: 'mirror', level: 'pro', play: ['from horns, ball with 1', '  1 passes to 2', '  2 skips to 5', '  1 ball-screens for 5, 5 drives off 1 to rim', '  3 ball-screens for 5, then rolls, 5 drives off 3 to rim'] },
  { law: 'mirror', level: 'u14', play: ['from diamond, ball with 1', '  1 drives to rim'] },
  { law: 'mirror', level: 'u14', play: ['from 1-4 high, ball with 1', '  3 screens for 4, then rolls', 'step "S2"', '  2 ball-screens for 1, 1 drives off 2 to rim'] },
  { law: 'mirror', level: 'pro', play: ['from 1-3-1, ball with 1', '  5 ball-screens for 1, 1 drives off 5 to nail'] },
  { law: 'mirror', level: 'u10', play: ['from line, ball with 1', '  1 passes to 3', '  2 seconds later, 4 sprints to top', '  3 bounce-passes to 1', '  1 hands off to 2', 'step "S2"', '  2 dribbles to rim', '  5 back-screens for 1, then rolls'] },
  { law: 'mirror', level: 'u14', play: ['from diamond, ball with 1', '  2 screens down for 5', '  3 ball-screens for 1, 1 drives off 3 to rim'] },
  { law: 'mirror', level: 'u10', play: ['from diamond, ball with 1', '  look 2: layup', '  1 back-screens for 4', '  look 4: jumper'] },
  { law: 'mirror', level: 'hs', play: ['from 2-3 high, ball with 1', '  1 hands off to 2', '  2 hands off to 3', '  4 screens for 2, then rolls', '  3 skips to 4', '  1 ball-screens for 4, then rolls, 4 drives off 1 to rim'] },
  { law: 'mirror', level: 'u10', play: ['from 1-3-1, ball with 1', '  5 screens for 1', '  look 1: layup'] },
  { law: 'mirror', level: 'hs', play: ['from diamond, ball with 1', '  4 ball-screens for 1, 1 drives off 4 to nail'] },
  { law: 'mirror', level: 'hs', play: ['from diamond, ball with 1', '  4 ball-screens for 1, 1 drives off 4 to rim'] },
  { law: 'mirror', level: 'u14', play: ['from stack, ball with 1', '  4 curls to nail', '  5 curls to nail', '  1 hands off to 4', '  1 back-screens for 5'] },
  { law: 'mirror', level: 'pro', play: ['from stack, ball with 1', '  2 screens down for 3, then rolls', 'step "S2"', '  5 ball-screens for 1, 1 drives off 5 to rim'] },
  { law: 'mirror', level: 'pro', play: ['from diamond, ball with 1', '  4 screens for 5, 5 cuts off 4 to nail'] },
  { law: 'partners', level: 'u10', play: ['from diamond, ball with 1', '  2 ball-screens for 1, 1 drives off 2 to right short corner', '  3 ball-screens for 2, 2 drives off 3 to right wing', '  4 fades to right slot', '  look 4: jumper'] },
  { law: 'partners', level: 'pro', play: ['from 1-4 low, ball with 1', '  4 back-screens for 5, then rolls', '  look 5: three', 'step "S2"', '  1 skips to 5', '  1 ball-screens for 5, 5 drives off 1 to left block', '  2 fades to left corner', '  look 2: jumper'] },
  { law: 'partners', level: 'u14', play: ['from diamond, ball with 1', '  2 screens across for 4, 4 cuts off 2 to right short corner', '  1 bounce-passes to 2', '  2 hands off to 1', '  1 dribbles to right slot', '  1 skips to 2', '  4 ball-screens for 2, 2 drives off 4 to right block', '  look 3: layup'] },
  { law: 'partners', level: 'u14', play: ['from 2-1-2, ball with 1', '  2 screens down for 4, then rolls', '  1 bounce-passes to 2', '  5 ball-screens for 2, 2 drives off 5 to nail', '  look 1: layup'] },
  { law: 'partners', level: 'u10', play: ['from 2-1-2, ball with 1', '  5 back-screens for 3, then rolls', '  3 screens down for 5', '  2 seconds later, 5 curls to nail'] },
  { law: 'partners', level: 'u14', play: ['from 2-3 high, ball with 1', '  2 back-screens for 3, then rolls', '  2 screens across for 4, 4 cuts off 2 to right wing', '  2 screens across for 4'] },
  { law: 'partners', level: 'u10', play: ['from 2-1-2, ball with 1', '  3 ball-screens for 4, 4 drives off 3 to left short corner', '  2 ball-screens for 4, 4 drives off 2 to left block', '  5 ball-screens for 2, 2 drives off 5 to left short corner'] },
  { law: 'partners', level: 'u10', play: ['from 2-3 high, ball with 1', '  1 skips to 2', '  2 dribbles to nail', '  4 ball-screens for 2, 2 drives off 4 to nail', '  5 screens down for 1, then rolls', '  look 5: layup'] },
  { law: 'partners', level: 'u14', play: ['from line, ball with 1', '  1 skips to 2', '  1 ball-screens for 2, 2 drives off 1 to rim', '  1 ball-screens for 2, then rolls, 2 drives off 1 to top', '  look 1: jumper'] },
  { law: 'partners', level: 'u10', play: ['from 1-4 low, ball with 1', '  3 ball-screens for 1, 1 drives off 3 to top', '  look 3: three'] },
  { law: 'apart', level: 'u10', play: ['from 2-3 high, ball with 1', '  1 passes to 3', '  3 passes to 4', '  4 passes to 5', 'step "S2"', '  1 screens across for 2', '  5 hands off to 1', '  1 hands off to 3', '  4 screens for 5, 5 cuts off 4 to right wing'] },
  { law: 'apart', level: 'u10', play: ['from 1-3-1, ball with 1', '  5 screens across for 4', '  1 dribbles to left wing', 'step "S2"', '  3 back-screens for 4, 4 cuts off 3 to left elbow', '  2 ball-screens for 1, 1 drives off 2 to nail'] },
  { law: 'flight', level: 'u14', play: ['from 3-out 2-in, ball with 1', 'step "S1"', '  once 5 catches, 3 sprints to left block', '  1 passes to 2', '  once 5 catches, 5 back-cuts to left elbow', '  2 hands off to 5', 'step "S2"', '  5 passes to 3'] },
  { law: 'flight', level: 'u14', play: ['from 5-out, ball with 1', 'step "S1"', '  2 back-screens for 5, then rolls', '  5 back-screens for 2, then rolls', '  2 flashes to right short corner', '  1 bounce-passes to 2', '  look 5: jumper', '  look 5: layup', 'step "S2"', '  3 fades to rim', '  2 hands off to 5', '  5 bounce-passes to 2', 'step "S3"', '  2 skips to 1', '  look 3: layup'] },
  { law: 'jump', level: 'hs', play: ['from 1-3-1, ball with 1', 'step "S1"', '  1 passes to 5', '  1 cuts to right corner', '  5 dribbles to right short corner', '  1 cuts to left corner', 'step "S2"', '  5 dribbles to right corner', '  3 ball-screens for 5, 5 drives off 3 to right corner', '  2 ball-screens for 5, then rolls, 5 drives off 2 to left wing', '  look 1: layup', 'step "S3"', '  5 passes to 1'] },
  { law: 'partners', level: 'u14', play: ['from 2-1-2, ball with 1', '  1 bounce-passes to 2', '  4 ball-screens for 2, then rolls, 2 drives off 4 to left corner', '  2 hands off to 4', 'step "S2"', '  4 hands off to 2', '  2 drives to right corner', '  look 5: jumper', '  look 5: jumper'] },
  { law: 'flight', level: 'u10', play: ['  1 passes to 5', '  1 screens across for 2', '  5 hands off to 1', '  1 skips to 2', '  4 ball-screens for 2, 2 drives off 4 to nail'] },
  { law: 'flight', level: 'u10', play: ['  2 screens for 3, then rolls', '  1 skips to 2', '  2 skips to 3', '  4 ball-screens for 3, 3 drives off 4 to right short corner'] },
  { law: 'partners', level: 'u10', play: ['  2 back-screens for 5, then rolls', '  1 bounce-passes to 2', '  2 skips to 3', 'step "S2"', '  4 screens across for 5, then rolls', '  3 bounce-passes to 4', '  5 ball-screens for 4, 4 drives off 5 to left slot', '  look 1: three'] },
  { law: 'flight', level: 'pro', play: ['  2 back-screens for 4', '  1 bounce-passes to 5', '  5 hands off to 2', '  2 bounce-passes to 4', '  4 drives to right short corner'] },
  { law: 'flight', level: 'hs', play: ['  5 back-screens for 2', '  2 screens for 5, 5 cuts off 2 to left corner', '  2 ball-screens for 1, then rolls', 'step "S2"', '  1 skips to 2'] },
  { law: 'jump', level: 'pro', play: ['from stack, ball with 1', '  2 ball-screens for 1, then rolls, 1 drives off 2 to rim', 'step "S2"', '  4 screens across for 2, 2 cuts off 4 to right block', '  1 drives to top', '  look 5: jumper'] },
  { law: 'jump', level: 'pro', play: ['  4 fades to top', '  3 ball-screens for 2, 2 drives off 3 to right elbow', '  1 ball-screens for 2', '  1 hands off to 5', '  2 cuts to rim', 'step "S4"', '  4 screens down for 1', '  1 screens down for 2, then rolls', '  5 skips to 2', 'step "S5"', '  2 drives to left slot', '  look 5: three', '  look 3: three'] },
  { law: 'partners', level: 'pro', play: ['from stack, ball with 1', '  2 back-screens for 4', '  5 dribbles to right short corner', 'step "S2"', '  3 back-screens for 1', '  3 ball-screens for 5, 5 drives off 3 to top', '  1 screens for 2, then rolls', '  2 screens for 3, 3 cuts off 2 to right short corner'] },
  { law: 'apart', level: 'hs', play: ['from stack, ball with 1', '  1 bounce-passes to 2', 'step "S2"', '  4 ball-screens for 2, 2 drives off 4 to rim', '  5 cuts to right short corner'] },
];

describe('a play that once broke a law', () => {
  it.each(found.map((entry) => [entry.law, entry.play.join(' / '), entry] as const))('%s: %s', (_, __, { law, level, play }) => {
    const text = ['notation 1', `level ${level}`, 'rules fiba', 'play "Law"', ...play.map((line) => `  ${line}`)].join('\n');
    expect(() => floorLaws[law](text)).not.toThrow();
  });
});
