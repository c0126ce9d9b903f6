// At the start of a line: whole lines, with stops for what the coach chooses.
import { message, type Message } from '../../../language/message/message.ts';
import type { LineTree } from '../../../language/grammar/tree.ts';
import type { BodyId } from '../../../language/play/play.ts';
import type { Choice } from './choice.ts';
import type { Line } from './line.ts';
import { unlikelihood } from './receivers.ts';

interface Statement {
  readonly label: string;
  /** As the protocol writes stops: `${1:text}`, `${2|one,other|}`. */
  readonly snippet: string;
  readonly in: readonly ('file' | 'play' | 'step')[];
  readonly about: Message;
  readonly indent?: number;
  /** Headers it writes: where the play has one of them already it is not offered. */
  readonly writes?: readonly LineTree['$type'][];
}

const men = '1,2,3,4,5';
const alignments = 'horns,box,stack,diamond,1-4 high,1-4 low,4-out 1-in,5-out,3-out 2-in,spread';

const statements: readonly Statement[] = [
  { label: 'look … : …', snippet: `look \${1|${men}|} "\${2:name}": \${3|jumper,layup,three,dunk,hook|}`, in: ['step'], about: message('A scoring chance: what stands behind the colon happens only if it is taken.') },
  { label: 'step …', snippet: 'step "${1:Name}"\n  $0', in: ['step', 'play'], about: message('The next step of the play.'), indent: 2 },
  {
    label: 'step … instead of … when …', snippet: `step "\${1:Name}" instead of "\${2:Step}" when X\${3|${men}|} \${4|shows on,switches to,denies,goes under,trails|} \${5|${men}|}\n  $0`, in: ['step'],
    about: message('A counter: what you run instead of a step when the defence takes it away.'), indent: 2,
  },
  { label: 'call …, shot …, leave …', snippet: 'call with ${1:22} to ${2:26} on the clock\nshot within ${3:16} seconds of the start\nleave ${4:4} seconds after a miss', in: ['play'], about: message('When it is called, by when the shot has to go, what a miss must leave.'), writes: ['Call', 'ShotWindow', 'Leave'] },
  { label: 'rebound …', snippet: 'rebound ${1:2, 4, 5} crash, ${2:1, 3} get back', in: ['play', 'step'], about: message('Who goes to the boards and who gets back.'), writes: ['Rebound'] },
  {
    label: 'play …', snippet: `play "\${1:Name}"\n  from \${2|${alignments}|}, ball with \${3|${men}|}\n  against man\n  call with \${4:20} on the clock\n\n  step "\${5:Entry}"\n    $0`, in: ['file'],
    about: message('A new play: where everybody stands, when it is called, its first step.'), indent: 0,
  },
  {
    label: 'play … from a throw-in', snippet: `play "\${1:Name}"\n  situation \${2|sideline throw-in,baseline throw-in|}\n  from box\n  against man\n\n  step "\${3:Entry}"\n    \${4|3,1,2,4,5|} inbounds from the \${5|left sideline,right sideline,right baseline,left baseline|} to \${6|2,1,3,4,5|}\n    $0`, in: ['file'],
    about: message('A play that starts with a throw-in.'), indent: 0,
  },
];

/** Nothing where something is written on the line already: there a whole line does not fit. */
export function statementChoices(line: Line): readonly Choice[] {
  const { prefix, expected, block, step } = line;
  if (prefix.slice(0, expected.from).trim() !== '' || !/^\s*[\p{L}\d]*$/u.test(prefix)) return [];
  const place = block.kind === 'play' ? (step === undefined ? 'play' : 'step') : 'file';
  // A new play may begin below any block.
  const there = new Set(block.lines.map(({ parsed }) => parsed.tree?.$type));
  const fitting = statements.filter((one) => (one.in.includes(place) || one.in.includes('file')) && !one.writes?.some((type) => there.has(type)));
  const written = fitting.map(({ label, snippet, about, indent }, at): Choice => ({ text: label, kind: 'statement', rank: (label.startsWith('play') && place !== 'file' ? 120 : 70) + at, snippet, about, ...(indent !== undefined && { indent }) }));
  const typed = prefix.trim().toLowerCase();
  return [...written, ...(place === 'step' ? deeds(line) : [])].filter(({ text }) => text.toLowerCase().startsWith(typed));
}

/** What the man with the ball and the others do most, with the numbers that are likely here. */
function deeds(line: Line): readonly Choice[] {
  const { holder, out, screening, where, acted } = line.standing;
  const others = (Object.keys(where) as BodyId[]).filter((body) => body !== holder && !body.startsWith('X'));
  if (holder === undefined || others.length === 0) return [];
  const near = others.toSorted((a, b) => unlikelihood({ ...line, actors: [holder] }, a) - unlikelihood({ ...line, actors: [holder] }, b)).join(',');
  const fresh = others.toSorted((a, b) => Number(acted.includes(a)) - Number(acted.includes(b))).join(',');
  const screener = screening[0];
  const made: readonly (readonly [label: string, snippet: string, about: Message])[] = [
    ...(out ? [[`${holder} inbounds to …`, `${holder} inbounds to \${1|${near}|}`, message('The ball comes in.')] as const] : [
      [`${holder} passes to …`, `${holder} passes to \${1|${near}|}`, message('To a man at rest at once; to a man on his way where he ends.')] as const,
      [`${holder} dribbles to …`, `${holder} dribbles to \${1|left wing,right wing,left slot,right slot,top|}`, message('A way with the ball.')] as const,
    ]),
    ['… cuts to …', `\${1|${fresh}|} cuts to \${2|rim,top,left corner,right corner,left wing,right wing|}`, message('A way without the ball.')],
    ['… ball-screens for …, then rolls', `\${1|${fresh}|} ball-screens for ${holder}, then \${2|rolls,pops,slips|}`, message('He is free when the man with the ball has passed him.')],
    ['… screens for …', `\${1|${fresh}|} screens \${2|down,up,across,away|} for \${3|${fresh}|}`, message('Where he stands follows from what his man does next.')],
    ...(screener === undefined ? [] : [[`… cuts off ${screener} to …`, `\${1|${fresh}|} cuts off ${screener} to \${2|top,rim,left wing,right wing|}`, message('He leaves so as to pass the screener a beat after the screen is set.')] as const]),
  ];
  return made.map(([text, snippet, about], at): Choice => ({ text, kind: 'statement', rank: 80 + at, snippet, about }));
}
