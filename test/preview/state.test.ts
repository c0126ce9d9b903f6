import { describe, expect, it } from 'vitest';
import * as change from '../../client/preview/state.ts';
import type { Show } from '../../client/preview/messages.ts';
import type { Playback } from '../../language/playback/playback.ts';
import { lighthouse } from '../support/playback-fixture.ts';

const message = (seq: number, playback: Playback | null = lighthouse, more: Partial<Show> = {}): Show =>
  ({ v: 1, kind: 'show', seq, title: 'Lighthouse', playback, stale: false, ...more });
const showing = (playback: Playback = lighthouse) => change.show(change.initialState(), message(1, playback), playback);
const cursor = (part: string, t?: number) => ({ v: 1 as const, kind: 'cursor' as const, part, ...(t !== undefined && { t }) });

describe('whose jobs are listed', () => {
  it('is the man who was chosen, who lights up; chosen again he is let go', () => {
    const chosen = change.chooseMan(change.seek(showing(), 3000), '3');
    expect(chosen).toMatchObject({ man: '3', lit: ['3'], t: 3000 });
    expect(change.chooseMan(chosen, '4')).toMatchObject({ man: '4', lit: ['4'] });
    expect(change.chooseMan(chosen, '3')).toMatchObject({ man: undefined, lit: [] });
  });

  it('stays through edits, and for the next play', () => {
    const other = { ...lighthouse, play: { ...lighthouse.play, key: 'play:other' } };
    expect(change.show(change.chooseMan(showing(), '3'), message(2, other), other).man).toBe('3');
  });
});

describe('a new picture while the coach types', () => {
  it('keeps run-through, time and speed', () => {
    const watching = change.setSpeed(change.seek(change.chooseRun(showing(), 2), 7000), 0.5);
    const edited = { ...lighthouse, runs: [lighthouse.runs[2]!, lighthouse.runs[0]!, lighthouse.runs[1]!] };
    expect(change.show(watching, message(2, edited), edited)).toMatchObject({ run: 0, t: 7000, speed: 0.5 });
  });

  it('a run-through that is gone gives way to the one that shares most with it', () => {
    const watching = change.seek(change.chooseRun(showing(), 1), 9000);
    const edited = { ...lighthouse, runs: [lighthouse.runs[2]!, lighthouse.runs[0]!] };
    expect(change.show(watching, message(2, edited), edited)).toMatchObject({ run: 1, t: 9000 });
  });

  it('goes on playing', () => {
    const playing = change.togglePlaying(showing());
    expect(change.show(playing, message(2), { ...lighthouse }).playing).toBe(true);
  });

  it('the newest wins: a frame that comes late is dropped', () => {
    const newest = change.show(showing(), message(7, lighthouse, { title: 'New' }), lighthouse);
    expect(change.show(newest, message(6, lighthouse, { title: 'Old' }), lighthouse)).toBe(newest);
  });

  it('a half-typed line keeps the last good picture and says which line it waits for', () => {
    const stale = change.show(showing(), message(2, null, { stale: true, line: 12 }), null);
    expect(stale).toMatchObject({ playback: lighthouse, stale: { line: 12 } });
    expect(change.show(stale, message(3), lighthouse).stale).toBeNull();
  });

  it('a play without a picture shows an empty floor, not the play before', () => {
    expect(change.show(showing(), message(2, null, { title: 'Other' }), null).playback).toBeNull();
    expect(change.show(showing(), message(2, null, { title: 'Other', stale: true }), null).playback).toBeNull();
  });

  it('another play starts at its call, standing', () => {
    const other = { ...lighthouse, play: { ...lighthouse.play, key: 'play:other' } };
    const state = change.show(change.seek(change.togglePlaying(showing()), 5000), message(2, other), other);
    expect(state).toMatchObject({ t: 0, run: 0, playing: false, lit: [] });
  });

  it('after a reload run-through, time and speed are where they were', () => {
    const kept = change.keptOf(change.setSpeed(change.seek(change.chooseRun(showing(), 1), 4321), 2))!;
    expect(change.show(change.initialState(kept), message(1), lighthouse)).toMatchObject({ run: 1, t: 4321, speed: 2 });
    expect(change.show(change.initialState({ ...kept, play: 'play:other' }), message(1), lighthouse)).toMatchObject({ run: 0, t: 0 });
  });

  it('one that cannot be read leaves the last good one, with the reason', () => {
    expect(change.refuse(showing(), 2, 'Update Setwright.')).toMatchObject({ playback: lighthouse, refusal: 'Update Setwright.' });
  });
});

describe('the cursor in the text', () => {
  it('moves the time to where the statement begins and lights its men', () => {
    const state = change.follow(showing(), cursor('middle/1.1'));
    expect(state).toMatchObject({ t: 6791, lit: ['1', '3'], part: 'middle/1.1' });
  });

  it('does not jump while the statement is being shown', () => {
    const watching = change.seek(showing(), 7000);
    expect(change.follow(watching, cursor('middle/1.1')).t).toBe(7000);
  });

  it('a screen lights its users', () => {
    expect(change.follow(showing(), cursor('zip/5.1')).lit).toEqual(['5', '3']);
  });

  it('goes to the run-through that has the statement', () => {
    const state = change.follow(showing(), cursor('slip/4.1'));
    expect(state).toMatchObject({ run: 2, t: 7011 });
  });

  it('on a look it shows the release', () => {
    expect(change.follow(showing(), cursor('middle?3.1')).t).toBe(lighthouse.runs[0]!.releaseAt);
  });

  it('on one value of a statement it shows the statement', () => {
    expect(change.follow(showing(), cursor('middle/1.1#to')).part).toBe('middle/1.1');
  });

  it('in a header it goes where it is told', () => {
    expect(change.follow(change.seek(showing(), 5000), cursor('call', 0)).t).toBe(0);
  });

  it('while the play moves it only lights', () => {
    const playing = { ...change.togglePlaying(showing()), t: 3000 };
    expect(change.follow(playing, cursor('middle?3.1'))).toMatchObject({ t: 3000, playing: true, lit: ['3'] });
  });
});

describe('playing', () => {
  it('stops at the end and starts again from the call', () => {
    const end = lighthouse.runs[0]!.end;
    const over = change.advance(change.advance(change.togglePlaying(showing()), end), 1);
    expect(over).toMatchObject({ t: end, playing: false });
    expect(change.togglePlaying(over)).toMatchObject({ t: 0, playing: true });
  });

  it('half speed takes twice as long', () => {
    expect(change.advance(change.togglePlaying(change.setSpeed(showing(), 0.5)), 1000).t).toBe(500);
  });

  it('stepping goes through every moment and back', () => {
    let state = showing();
    const forth: number[] = [];
    for (let i = 0; i < 40; i++) forth.push((state = change.stepMoment(state, 1)).t);
    expect(forth.at(-1)).toBe(lighthouse.runs[0]!.end);
    const back: number[] = [];
    for (let i = 0; i < 40; i++) back.push((state = change.stepMoment(state, -1)).t);
    expect(back.at(-1)).toBe(0);
    expect([...new Set(back)].reverse()).toEqual([0, ...new Set(forth)].slice(0, -1));
  });

  it('another run-through goes on from the same time', () => {
    expect(change.chooseRun(change.seek(showing(), 6000), 2)).toMatchObject({ run: 2, t: 6000 });
    expect(change.chooseRun(change.seek(showing(), 11_190), 2).t).toBe(lighthouse.runs[2]!.end);
    const state = showing();
    expect(change.chooseRun(state, 8)).toBe(state);
  });
});
