import { describe, expect, it } from 'vitest';
import { quiltPicture } from '../../client/charts/quilt-picture.ts';
import { fold } from '../../core/log/evolve.ts';
import { scenarioEvents } from './scenario.ts';

const log = fold(scenarioEvents());

describe('the picture of the quilt', () => {
  it('shows as found only what was found', () => {
    const { places } = quiltPicture(log, 'found');
    expect(places.get('1-1')).toMatchObject({
      standing: 'found',
      findings: ['fading', 'split-seam'],
      done: [],
    });
    expect(places.get('backing')).toMatchObject({ standing: 'untouched', findings: ['sound'] });
  });

  it('shows now what was done, left, and is still in question', () => {
    const { places } = quiltPicture(log, 'now');
    expect(places.get('1-1')?.standing).toBe('done');
    expect(places.get('3-3')).toMatchObject({ standing: 'done', done: ['patch'] });
    expect(places.get('2-4')).toMatchObject({ standing: 'undecided', undecided: ['overlay', 'replace'] });
    expect(places.get('4-5')?.standing).toBe('doing');
    expect(places.get('6-3')?.standing).toBe('planned');
  });

  it('takes its shape from the sides that were measured', () => {
    expect(quiltPicture(log, 'now').sides).toMatchObject({
      width: 60,
      length: 72,
      top: 60.5,
      right: 71.25,
      bottom: 60,
      left: 72,
    });
  });

  it('leaves out the kinds that are not asked for', () => {
    const { places } = quiltPicture(log, 'now', new Set(['condition']));
    expect(places.get('3-3')).toMatchObject({ standing: 'found', done: [] });
  });
});
