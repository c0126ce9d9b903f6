// When to call a play, as it is needed at the bench.
import { message, type Message } from '../message/message.ts';
import type { Times } from '../timeline/timeline.ts';

/** `Call with 13 s or more for the first look, with 16 s for every look.`, and what is enough for a team already in place; nothing of a play without a look. */
export function sayCall({ firstLook, allLooks }: Times): readonly Message[] {
  if (firstLook === undefined) return [];
  const seconds = firstLook.fromCall;
  const called = allLooks === undefined || allLooks.fromCall === seconds ? message('Call with {seconds} s or more.', { seconds }) : message('Call with {seconds} s or more for the first look, with {all} s for every look.', { seconds, all: allLooks.fromCall });
  return firstLook.alreadySet < seconds ? [called, message('Already in place: {seconds} s.', { seconds: firstLook.alreadySet })] : [called];
}
