import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readPlayback } from '../../language/playback/validate.ts';
import { anyPlayback } from '../support/any-playback.ts';
import { lighthouse } from '../support/playback-fixture.ts';

const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a playback that crosses a border', () => {
  it('is read as it was written', () => {
    const read = readPlayback(json(lighthouse));
    expect(read).toEqual({ ok: true, playback: json(lighthouse) });
    fc.assert(fc.property(anyPlayback, (playback) => readPlayback(json(playback)).ok), { numRuns: 40 });
  });

  it('from a newer version says what to do', () => {
    const read = readPlayback({ ...lighthouse, version: 2 });
    expect(read).toMatchObject({ ok: false });
    expect(!read.ok && read.message).toMatch(/newer Setwright.*version 2.*Update/);
  });

  it.each([
    ['not a playback at all', 'hello', 'the whole'],
    ['nothing', null, 'the whole'],
    ['another version', { ...lighthouse, version: 0 }, 'version'],
    ['a run without an end', { ...lighthouse, runs: [{ ...lighthouse.runs[0], end: undefined }] }, 'runs.0.end'],
    ['a body that is nobody', { ...lighthouse, bodies: [{ id: '6', team: 'offence', label: '6' }] }, 'bodies.0.id'],
    ['keyframes in no time', { ...lighthouse, runs: [{ ...lighthouse.runs[0]!, defenders: { X1: { t0: 0, stepMs: 0, points: [] } } }] }, 'runs.0.defenders.X1.stepMs'],
  ])('%s is refused with the place that does not fit', (_, value, where) => {
    const read = readPlayback(json(value) ?? null);
    expect(!read.ok && read.message).toContain(where);
  });

  it('never throws, whatever arrives', () => {
    fc.assert(fc.property(fc.anything(), (value) => readPlayback(value).ok === false));
  });
});
