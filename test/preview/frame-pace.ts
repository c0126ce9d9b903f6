// What a frame of the player takes with ten moving bodies, beside a loop that moves ten bodies and does nothing else; and what playing leaves behind.
import { heldBy, type Held } from '../support/memory.ts';
import { handsOn, type Stage } from './player-in-browser.ts';

interface Frame {
  /** ms of its script by the wall, and when it came. */
  readonly script: number;
  readonly at: number;
}
type Frames = { frames: Frame[] };

/** p95 of 240 frames: ms of processor and by the wall, and how many came late; the same of the bare loop: what the machine takes and makes late by itself. */
export interface FramePace {
  readonly processor: number;
  readonly bare: number;
  readonly wall: number;
  readonly wallBare: number;
  readonly late: number;
  readonly lateBare: number;
}

const wanted = 240;

/** On the page that is open; may be called again and again. */
export async function openFramePace(stage: Stage): Promise<{ readonly measure: () => Promise<FramePace> }> {
  const { page } = stage;
  const { seek } = handsOn(() => stage);
  await page.evaluate(() => {
    const real = requestAnimationFrame.bind(window);
    const frames: { script: number; at: number }[] = [];
    Object.assign(window, { frames });
    window.requestAnimationFrame = (callback) =>
      real((now) => {
        const start = performance.now();
        callback(now);
        frames.push({ script: performance.now() - start, at: now });
      });
  });
  const cdp = await page.context().newCDPSession(page);

  /** What the frames took meanwhile by the thread’s own clock, ms: another process on the same core is not counted. */
  async function processorOf(work: () => Promise<unknown>): Promise<readonly number[]> {
    type Traced = { readonly name: string; readonly tdur?: number };
    const events: Traced[] = [];
    const collect = ({ value }: { value: object[] }) => void events.push(...(value as Traced[]));
    cdp.on('Tracing.dataCollected', collect);
    await cdp.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories: ['devtools.timeline'] } });
    await work();
    const complete = new Promise<unknown>((done) => cdp.once('Tracing.tracingComplete', done));
    await cdp.send('Tracing.end');
    await complete;
    cdp.off('Tracing.dataCollected', collect);
    return events.flatMap(({ name, tdur }) => (name === 'FireAnimationFrame' && tdur !== undefined ? [tdur / 1000] : []));
  }

  const taken = () => page.evaluate(() => (window as unknown as Frames).frames.splice(0));

  const bareLoop = () =>
    page.evaluate(
      (wanted) =>
        new Promise<Frame[]>((done) => {
          const bodies = [...document.querySelectorAll('.body')].map((body) => body.cloneNode(true) as SVGElement);
          const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
          svg.append(...bodies);
          document.body.append(svg);
          const frames: Frame[] = [];
          const next = (at: number) => {
            const start = performance.now();
            bodies.forEach((body, i) => body.setAttribute('transform', `translate(${(frames.length + i * 7) % 100} ${(frames.length * 3) % 100})`));
            frames.push({ script: performance.now() - start, at });
            if (frames.length < wanted) return void requestAnimationFrame(next);
            svg.remove();
            done(frames);
          };
          requestAnimationFrame(next);
        }),
      wanted,
    );

  async function measure(): Promise<FramePace> {
    let alone: Frame[] = [];
    const bareProcessor = await processorOf(async () => (alone = await bareLoop()));
    await taken();
    await seek(2500);
    await page.keyboard.press('Space');
    await page.waitForTimeout(300);
    await taken();
    const processor = await processorOf(() => page.waitForFunction((wanted) => (window as unknown as Frames).frames.length >= wanted, wanted, { timeout: 20_000 }));
    const frames = await taken();
    await page.keyboard.press('Space');
    return { processor: p95Of(processor), bare: p95Of(bareProcessor), wall: p95Of(scripts(frames)), wallBare: p95Of(scripts(alone)), late: lateOf(frames), lateBare: lateOf(alone) };
  }

  return { measure };
}

/** What the page that is open holds once it has played, and after playing twice more. */
export async function playedAgain(stage: Stage): Promise<{ readonly before: Held; readonly after: Held }> {
  const { seek } = handsOn(() => stage);
  const cdp = await stage.page.context().newCDPSession(stage.page);
  const play = async () => {
    await seek(2500);
    await stage.page.keyboard.press('Space');
    await stage.page.waitForTimeout(4200);
    await stage.page.keyboard.press('Space');
  };
  await stage.page.keyboard.press('+');
  await play();
  const before = await heldBy(cdp);
  await play();
  await play();
  return { before, after: await heldBy(cdp) };
}

const scripts = (frames: readonly Frame[]) => frames.map(({ script }) => script);
const p95Of = (values: readonly number[]) => values.toSorted((a, b) => a - b)[Math.floor(values.length * 0.95)]!;
const lateOf = (frames: readonly Frame[]) => frames.slice(1).filter(({ at }, i) => at - frames[i]!.at > 25).length;
