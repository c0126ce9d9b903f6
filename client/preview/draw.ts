// The moving picture: elements made once for a play, moved by their transforms each frame. The same nodes as the printed picture.
import { courtNodes } from '../../language/picture/court-lines.ts';
import { armsNode, ballLook, ballNodes, carrierNode, defenceLabel, labelNode, offenceNodes, screenBar } from '../../language/picture/figures.ts';
import { placeLabels, type Placed } from '../../language/picture/labels.ts';
import { node, textNode } from '../../language/picture/nodes.ts';
import { paint, print, type Palette } from '../../language/picture/palette.ts';
import { AT_HAND, BODY_CLEAR, labelsAt, LABEL_SIZE, phaseOf, sceneBall, shyOf, stepAt, type Phase } from '../../language/picture/scene.ts';
import { heightOf, viewBoxOf, viewOf, widthOf, type View } from '../../language/picture/view.ts';
import { drawWay, waysOf, type Way } from '../../language/picture/ways.ts';
import type { BodyId, PartId } from '../../language/play/play.ts';
import type { BodyAt, Moment } from '../../language/playback/at.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { build, group, rebuild, setAttribute } from './elements.ts';
import { createRows } from './rows.ts';
import type { LabelledRun } from './state.ts';
import { drawnView, turningFor, UPRIGHT, type Turning } from './turning.ts';
import { message } from '../../language/message/message.ts';
import { tell } from './tell.ts';

// The style sheet gives the colours, by the names of the palette.
const themed: Palette = {
  out: 'var(--out)', floor: 'var(--floor)', paint: 'var(--paint)', line: 'var(--court-line)', ring: 'var(--ring)',
  offence: 'var(--offence)', offenceInk: 'var(--offence-ink)', defence: 'var(--defence)', ball: 'var(--ball)', ballEdge: 'var(--ball-edge)',
  way: 'var(--way)', look: 'var(--look)', lookInk: 'var(--look-ink)', problem: 'var(--problem)', problemInk: 'var(--problem-ink)',
  ink: 'var(--ink)', muted: 'var(--muted)',
};
const paints = paint(themed);

interface Figure {
  /** Where he is drawn, and how large; NaN before he is. */
  x: number;
  y: number;
  facing: number;
  scale: number;
  readonly root: SVGGElement;
  readonly place: SVGTransform;
  /** Upright on a court that is laid on its side. */
  readonly upright: SVGTransform;
  readonly size: SVGTransform;
  readonly turn: SVGTransform;
  readonly turned: SVGGElement;
  hasBall: boolean;
  screening: boolean;
  lit: boolean;
  shown: boolean;
}

interface DrawnWay {
  way: Way;
  readonly root: SVGGElement;
  readonly fill: (way: Way) => void;
  phase: Phase | undefined;
  marked: boolean;
}

/** How the floor lies in the picture, for what is laid over it. */
export interface Drawn {
  readonly viewBox: string;
  /** How large players are drawn. */
  readonly scale: number;
  readonly turning: Turning;
}

export interface CourtPicture {
  readonly svg: SVGSVGElement;
  /** A new play or another run of it. */
  readonly load: (playback: Playback | null, run: LabelledRun | undefined) => void;
  readonly frame: (moment: Moment, lit: readonly BodyId[], part: PartId | undefined) => void;
  readonly drawn: () => Drawn;
  /** Where a place on the floor (cm) is on the screen, pixels. */
  readonly onScreen: (x: number, y: number) => DOMPoint | undefined;
  /** The picture or the window has another size: letters are kept readable, and a whole court lies as it is seen best. */
  readonly resized: () => void;
}

export interface Picked {
  readonly body: (id: BodyId) => void;
  readonly part: (part: PartId) => void;
  readonly finding: (index: number) => void;
}

export function createCourt(picked: Picked): CourtPicture {
  const svg = build(node('svg', { class: 'court', role: 'img', 'aria-label': tell(message('The floor')), preserveAspectRatio: 'xMidYMin meet' })) as SVGSVGElement;
  const layers = { floor: group('floor-layer'), ways: group('ways-layer'), defence: group('defence-layer'), offence: group('offence-layer'), ball: group('ball-layer'), labels: group('label-layer') };
  const onFloor = group('on-floor');
  onFloor.append(layers.floor, layers.ways, layers.defence, layers.offence, layers.ball);
  const lie = transformOf(svg, onFloor);
  svg.append(onFloor, layers.labels);
  const figures = new Map<BodyId, Figure>();
  const ball = createBall(svg);
  layers.ball.append(ball.root);

  let playback: Playback | null = null;
  let run: LabelledRun | undefined;
  let view: View = { left: -820, right: 820, top: -227, bottom: 1312, full: false, bodies: 1 };
  let turning = UPRIGHT;
  let floor = '';
  const setWays = createRows(layers.ways, ({ part, kind }: Way) => [part, kind], drawnWay);
  let ways: readonly DrawnWay[] = [];
  let labels: readonly Placed[] = [];
  /** What the labels in the picture say. */
  let labelled = '';
  let labelSize = LABEL_SIZE;

  svg.addEventListener('click', (event) => {
    const target = (event.target as Element).closest('[data-body],[data-part],[data-finding]');
    if (target === null) return;
    const { body, part, finding } = (target as SVGElement).dataset;
    if (body !== undefined) picked.body(body as BodyId);
    else if (part !== undefined) picked.part(part);
    else picked.finding(Number(finding));
  });

  function load(next: Playback | null, nextRun: LabelledRun | undefined): void {
    if (next === null || nextRun === undefined) {
      playback = next;
      floor = '';
      run = undefined;
      ways = setWays([]);
      showNoLabels();
      for (const figure of figures.values()) hide(figure);
      ball.frame(undefined, 1);
      return;
    }
    if (next !== playback) loadFloor(next);
    if (next !== playback || nextRun !== run) ways = setWays(waysOf(nextRun));
    if (next !== playback) loadFigures(next);
    playback = next;
    run = nextRun;
    labels = [];
  }

  function showNoLabels(): void {
    labelled = '';
    labels = [];
    layers.labels.replaceChildren();
  }

  function loadFloor(next: Playback): void {
    view = viewOf(next);
    const known = `${viewBoxOf(view)} ${JSON.stringify(next.court)}`;
    if (known === floor) return;
    floor = known;
    svg.classList.toggle('full-court', view.full);
    layers.floor.replaceChildren(...courtNodes(next.court, view, paints).map(build));
    turning = turningNow();
    layIt();
    resized();
  }

  const turningNow = () => turningFor(view, { width: innerWidth, height: innerHeight, team: document.body.classList.contains('team') });

  function layIt(): void {
    const seen = drawnView(view, turning);
    svg.setAttribute('viewBox', viewBoxOf(seen));
    svg.parentElement?.style.setProperty('aspect-ratio', `${widthOf(seen)} / ${heightOf(seen)}`);
    svg.closest<HTMLElement>('.player')?.style.setProperty('--ratio', (widthOf(seen) / heightOf(seen)).toFixed(3));
    lie.setRotate(degrees(turning), 0, 0);
    for (const { upright } of [...figures.values(), ball]) upright.setRotate(-degrees(turning), 0, 0);
    for (const figure of figures.values()) figure.facing = NaN;
    showNoLabels();
  }

  function loadFigures(next: Playback): void {
    for (const { id, team, label } of next.bodies) {
      const known = figures.get(id);
      if (known !== undefined && known.root.dataset.label === label) continue;
      known?.root.remove();
      const made = createFigure(svg, id, team, label);
      made.upright.setRotate(-degrees(turning), 0, 0);
      figures.set(id, made);
      layers[team].append(made.root);
    }
    for (const figure of figures.values()) {
      if (figure.scale === view.bodies) continue;
      figure.scale = view.bodies;
      figure.size.setScale(view.bodies, view.bodies);
    }
  }

  function frame(moment: Moment, lit: readonly BodyId[], part: PartId | undefined): void {
    if (playback === null || run === undefined) return;
    const step = stepAt(run, moment.t);
    for (const drawn of ways) showWay(drawn, phaseOf(drawn.way, step, moment.t), drawn.way.part === part);
    const seen = new Set<BodyId>();
    for (const body of moment.bodies) {
      const figure = figures.get(body.id);
      if (figure === undefined) continue;
      seen.add(body.id);
      moveFigure(figure, body, moment.ball?.holder === body.id, isScreening(run, body), lit.includes(body.id), degrees(turning));
    }
    for (const [id, figure] of figures) if (!seen.has(id)) hide(figure);
    ball.frame(moment.ball === undefined ? undefined : sceneBall(run, moment.ball, moment.t, view.bodies, turning.toUpright(AT_HAND)), view.bodies);
    showLabels(playback, run, moment);
  }

  function showLabels(shown: Playback, of: LabelledRun, moment: Moment): void {
    const { toDrawn } = turning;
    const wanted = labelsAt(shown, of, moment, view.bodies).map((one) => ({ ...one, anchor: toDrawn(one.anchor) }));
    if (wanted.length === 0) {
      if (labelled !== '') showNoLabels();
      return;
    }
    const shy = shyOf(shown.court, ways.flatMap(({ way, phase }) => (phase === undefined ? [] : [{ way, phase }])))
      .map((one) => ({ ...one, at: toDrawn(one.at) }));
    const bodies = moment.bodies.map(({ x, y }) => toDrawn([x * 100, y * 100]));
    labels = placeLabels(wanted, { view: drawnView(view, turning), size: labelSize, bodies, bodyRadius: BODY_CLEAR * view.bodies, shy }, labels);
    const key = labels.map(({ key: of, kind, text, width, size }) => [of, kind, text, width, size].join(' ')).join('\n');
    if (key !== labelled) {
      labelled = key;
      layers.labels.replaceChildren(...labels.map((label) => tagged(build(labelNode(label, paints)), label.key)));
      return;
    }
    labels.forEach(({ x, y }, i) => setAttribute(layers.labels.children[i]!, 'transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`));
  }

  /** Letters stay readable in a small panel: at least 11 px. */
  function resized(): void {
    if (floor !== '' && turningNow() !== turning) {
      turning = turningNow();
      layIt();
    }
    const seen = drawnView(view, turning);
    const { width, height } = svg.getBoundingClientRect();
    const pixels = Math.min(width / widthOf(seen), height / heightOf(seen));
    const wanted = pixels > 0 ? Math.min(Math.max(LABEL_SIZE, 11 / pixels), 80) : LABEL_SIZE;
    labelSize = wanted;
  }

  const onScreen = (x: number, y: number) => {
    const matrix = svg.getScreenCTM();
    return matrix === null ? undefined : new DOMPoint(...turning.toDrawn([x, y])).matrixTransform(matrix);
  };

  return { svg, load, frame, resized, drawn: () => ({ viewBox: viewBoxOf(drawnView(view, turning)), scale: view.bodies, turning }), onScreen };
}

const degrees = ({ turned }: Turning): number => (turned ? 90 : 0);

function isScreening(run: LabelledRun, { id, moving, action }: BodyAt): boolean {
  return !moving && action !== undefined && run.screens.some((screen) => screen.action === action && screen.by === id);
}

function tagged(made: SVGElement, key: string): SVGElement {
  const finding = /^finding (\d+)$/.exec(key)?.[1];
  if (finding === undefined) made.dataset.part = key;
  else made.dataset.finding = finding;
  return made;
}

function drawnWay(way: Way): DrawnWay {
  const root = group(`way ${way.kind}`);
  root.dataset.part = way.part;
  root.setAttribute('visibility', 'hidden');
  let looks = '';
  const drawn: DrawnWay = {
    way,
    root,
    phase: undefined,
    marked: false,
    fill(newest) {
      drawn.way = newest;
      const { t0: _t0, t1: _t1, ...seen } = newest;
      const now = JSON.stringify(seen);
      if (now === looks) return;
      looks = now;
      const d = newest.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');
      rebuild(root, [node('path', { class: 'reach', d }), ...drawWay(newest, paints)]);
    },
  };
  return drawn;
}

function showWay(drawn: DrawnWay, phase: Phase | undefined, marked: boolean): void {
  if (drawn.phase === phase && drawn.marked === marked) return;
  drawn.phase = phase;
  drawn.marked = marked;
  if (phase === undefined) {
    drawn.root.setAttribute('visibility', 'hidden');
    return;
  }
  drawn.root.removeAttribute('visibility');
  drawn.root.setAttribute('class', `way ${drawn.way.kind} ${phase}${marked ? ' marked' : ''}`);
}

function createFigure(svg: SVGSVGElement, id: BodyId, team: 'offence' | 'defence', label: string): Figure {
  const root = group(`body ${team}`);
  root.dataset.body = id;
  root.dataset.label = label;
  const turned = group('turned');
  const halo = build(node('circle', { class: 'halo', r: 62 }));
  if (team === 'defence') turned.append(build(armsNode(paints)));
  else turned.append(build(screenBar(paints)));
  const own = team === 'defence' ? [defenceLabel(label, paints)] : [carrierNode(paints), ...offenceNodes(label, paints)];
  root.append(halo, turned, ...own.map(build));
  const place = transformOf(svg, root);
  const upright = root.transform.baseVal.appendItem(svg.createSVGTransform());
  const size = root.transform.baseVal.appendItem(svg.createSVGTransform());
  const turn = transformOf(svg, turned);
  return { root, place, upright, size, turn, turned, x: NaN, y: NaN, facing: NaN, scale: NaN, hasBall: false, screening: false, lit: false, shown: true };
}

function transformOf(svg: SVGSVGElement, of: SVGGElement): SVGTransform {
  return of.transform.baseVal.initialize(svg.createSVGTransform());
}

function hide(figure: Figure): void {
  if (!figure.shown) return;
  figure.shown = false;
  figure.root.setAttribute('visibility', 'hidden');
}

function moveFigure(figure: Figure, { x, y, facing }: BodyAt, hasBall: boolean, screening: boolean, lit: boolean, lies: number): void {
  if (figure.x !== x || figure.y !== y) figure.place.setTranslate((figure.x = x) * 100, (figure.y = y) * 100);
  if (figure.facing !== facing) figure.turn.setRotate(((figure.facing = facing) * 180) / Math.PI + lies, 0, 0);
  if (!figure.shown) {
    figure.shown = true;
    figure.root.removeAttribute('visibility');
  }
  if (figure.hasBall !== hasBall) {
    figure.root.classList.toggle('has-ball', (figure.hasBall = hasBall));
    // Who has the ball is drawn last, so that nobody stands on him.
    if (hasBall) figure.root.parentNode!.append(figure.root);
  }
  if (figure.screening !== screening) figure.root.classList.toggle('screening', (figure.screening = screening));
  if (figure.lit !== lit) figure.root.classList.toggle('lit', (figure.lit = lit));
}

function createBall(svg: SVGSVGElement) {
  const root = group('ball');
  const shadow = build(node('circle', { class: 'shadow', r: 13, ...paints['ball-shadow'] }));
  const sized = group('sized');
  sized.append(...ballNodes(paints).map(build));
  root.append(shadow, sized);
  const place = transformOf(svg, root);
  const upright = root.transform.baseVal.appendItem(svg.createSVGTransform());
  const size = transformOf(svg, sized);
  const fall = transformOf(svg, shadow as SVGGElement);
  let drawn: string | undefined;
  return {
    root,
    upright,
    frame(ball: { readonly x: number; readonly y: number; readonly z: number } | undefined, scale: number): void {
      const now = ball === undefined ? '' : `${ball.x} ${ball.y} ${ball.z} ${scale}`;
      if (now === drawn) return;
      drawn = now;
      if (ball === undefined) {
        root.setAttribute('visibility', 'hidden');
        return;
      }
      root.removeAttribute('visibility');
      const look = ballLook(ball.z);
      place.setTranslate(ball.x, ball.y);
      size.setScale(look.scale * scale, look.scale * scale);
      fall.setTranslate(0, look.shadow);
    },
  };
}

/** The key to the lines: for a sheet, where a circle is round whoever has the ball; on the screen in two columns, so that a phone shows its words. */
export function createKey(on: 'paper' | 'screen'): SVGSVGElement {
  const [columns, look] = on === 'paper' ? [4, paint(print)] : [2, paints];
  const rows: readonly (readonly [Way['kind'], string])[] = [['cut', tell(message('a cut'))], ['dribble', tell(message('a dribble'))], ['pass', tell(message('a pass'))], ['screen', tell(message('a screen'))], ['hand-off', tell(message('a hand-off'))], ['shot', tell(message('a shot'))]];
  const svg = build(node('svg', { class: 'key', viewBox: on === 'screen' ? '0 0 960 420' : '0 0 1920 280', role: 'img', 'aria-label': tell(message('What the lines mean: plain with an arrow a cut, zigzag a dribble, broken a pass, a bar across the end a screen, two strokes a hand-off, double a shot')) })) as SVGSVGElement;
  rows.forEach(([kind, words], i) => {
    // The two strokes stand in the middle of where the lines lie.
    const long = kind === 'hand-off' ? 90 : kind === 'shot' ? 190 : 156;
    const inset = Math.max(0, (156 - long) / 2);
    const way: Way = { part: '', kind, who: '1', step: undefined, t0: 0, t1: 0, points: [[0, 0], [long, 0]] };
    const cell = build(node('g', { transform: `translate(${6 + inset + (i % columns) * 500} ${70 + Math.floor(i / columns) * 140})` }, ...drawWay(way, look, { start: 0, end: 0, bodyAtEnd: false }), textNode(words, { x: 190 - inset, dy: '0.35em', ...look.key })));
    svg.append(cell);
  });
  if (on === 'paper') svg.append(build(node('g', { transform: 'translate(1006 210)' }, node('circle', { cx: 78, cy: 0, r: 46, ...look.carrier }), textNode('1', { x: 78, ...look['printed-number'] }), textNode(tell(message('has the ball')), { x: 190, dy: '0.35em', ...look.key }))));
  return svg;
}
