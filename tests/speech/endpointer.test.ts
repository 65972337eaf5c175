import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type EndpointEvent, Endpointer, type Utterance } from '../../server/speech/endpointer.ts';
import { makeNoise } from './support/make-sound.ts';

const FRAME_S = 0.032;
const loud = makeNoise(1, 0.2).slice(0, 512);
const hush = new Float32Array(512);

/** `S1.5` is one and a half seconds of speech, `.0.7` silence. */
function run(endpointer: Endpointer, script: string, end = true): EndpointEvent[] {
  const events: EndpointEvent[] = [];
  for (const [, kind, length] of script.matchAll(/([S.])(\d+(?:\.\d+)?)/g)) {
    const frames = Math.round(Number(length) / FRAME_S);
    for (let i = 0; i < frames; i++)
      events.push(...endpointer.push(kind === 'S' ? loud : hush, kind === 'S' ? 0.95 : 0.02));
  }
  if (end) events.push(...endpointer.flush());
  return events;
}
const utterances = (events: EndpointEvent[]): Utterance[] =>
  events.flatMap((event) => (event.type === 'utterance-ended' ? [event.utterance] : []));

describe('an utterance', () => {
  it('ends after the pause, with run-up before and a little after', () => {
    const events = run(new Endpointer(), '.1 S2 .1 ');
    expect(events.map((event) => event.type)).toEqual(['speech-started', 'utterance-ended']);
    const [utterance] = utterances(events) as [Utterance];
    expect(utterance.startSample / 16_000).toBeCloseTo(1 - 0.4, 1);
    expect(utterance.endSample / 16_000).toBeCloseTo(3 + 0.2, 1);
    expect(utterance.pcm.length).toBe(utterance.endSample - utterance.startSample);
    expect(utterance.endedBy).toBe('pause');
  });

  it('bridges a pause shorter than the setting', () => {
    expect(utterances(run(new Endpointer(), 'S1 .0.5 S1 .1'))).toHaveLength(1);
    expect(utterances(run(new Endpointer({ endPauseMs: 400 }), 'S1 .0.5 S1 .1'))).toHaveLength(2);
  });

  it('of less than 250 ms is dismissed: a knock is no word', () => {
    expect(utterances(run(new Endpointer(), '.1 S0.2 .1'))).toHaveLength(0);
    expect(run(new Endpointer(), '.1 S0.2 .1').at(-1)?.type).toBe('speech-dismissed');
  });

  it('needs more than a high probability: what is nearly silent is not speech', () => {
    const endpointer = new Endpointer();
    const events: EndpointEvent[] = [];
    const whisper = loud.map((value) => value * 0.001);
    for (let i = 0; i < 60; i++) events.push(...endpointer.push(whisper, 0.99));
    expect(utterances([...events, ...endpointer.flush()])).toHaveLength(0);
  });

  it('once begun goes on above .35, but does not begin there', () => {
    const endpointer = new Endpointer();
    for (let i = 0; i < 30; i++) endpointer.push(loud, 0.4);
    expect(endpointer.isOpen).toBe(false);
    for (let i = 0; i < 10; i++) endpointer.push(loud, 0.6);
    for (let i = 0; i < 60; i++) endpointer.push(loud, 0.4);
    expect(endpointer.isOpen).toBe(true);
  });

  it('of more than 25 s is cut at its longest recent pause, and nothing of it is lost', () => {
    const parts = utterances(run(new Endpointer(), 'S14 .0.4 S6 .0.2 S12 .1'));
    expect(parts).toHaveLength(2);
    expect(parts[0]!.endedBy).toBe('length');
    expect(parts[0]!.endSample / 16_000).toBeCloseTo(14.2, 1);
    expect(parts[1]!.startSample).toBe(parts[0]!.endSample);
  });

  it('without any pause is still cut', () => {
    const parts = utterances(run(new Endpointer(), 'S70 .1'));
    expect(parts.length).toBeGreaterThanOrEqual(3);
    for (const part of parts) expect(part.pcm.length / 16_000).toBeLessThanOrEqual(25.1);
  });

  it('ends at once when the stream ends', () => {
    expect(utterances(run(new Endpointer(), 'S1'))[0]!.endedBy).toBe('end');
  });
});

describe('the pause', () => {
  it('grows for a speaker who goes on soon after being cut off, within its limit, and comes back', () => {
    const endpointer = new Endpointer();
    run(endpointer, 'S1 .0.8 S1 .0.8 S1 .0.8 S1', false);
    expect(endpointer.endPauseMs).toBeGreaterThan(700);
    run(endpointer, '.0.8 S1 '.repeat(40), false);
    expect(endpointer.endPauseMs).toBeLessThanOrEqual(1400);
    run(endpointer, '.5 S1 '.repeat(60), false);
    expect(endpointer.endPauseMs).toBeLessThan(700);
  });

  it('stays as set when adapting is off', () => {
    const endpointer = new Endpointer({ adaptPause: false });
    run(endpointer, 'S1 .0.7 S1 .0.7 S1 .0.7', false);
    expect(endpointer.endPauseMs).toBe(600);
  });
});

it('gives back every frame with speech exactly once and in order, whatever comes', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 300 })), { maxLength: 20 }),
      (script) => {
        const endpointer = new Endpointer({ minSpeechMs: 0 });
        const events: EndpointEvent[] = [];
        const spoken: number[] = [];
        let index = 0;
        for (const [speech, frames] of script) {
          for (let i = 0; i < frames; i++) {
            const frame = new Float32Array(512).fill(speech ? 0.1 : 0);
            if (speech) spoken.push(index);
            events.push(...endpointer.push(frame, speech ? 0.9 : 0.1));
            index++;
          }
        }
        events.push(...endpointer.flush());
        const parts = utterances(events);
        const covered = new Map<number, number>();
        for (const part of parts) {
          for (let sample = part.startSample; sample < part.endSample; sample += 512) {
            covered.set(sample / 512, (covered.get(sample / 512) ?? 0) + 1);
          }
        }
        for (const frame of spoken) expect(covered.get(frame)).toBe(1);
        for (let i = 1; i < parts.length; i++)
          expect(parts[i]!.startSample).toBeGreaterThan(parts[i - 1]!.startSample);
      },
    ),
    { numRuns: 50 },
  );
});
