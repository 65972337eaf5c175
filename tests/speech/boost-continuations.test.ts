import { expect, it } from 'vitest';
import { BoostContinuations } from '../../server/speech/boost-continuations.ts';

const boosts = new BoostContinuations();
boosts.add([10, 11, 12]);
boosts.add([10, 15]);
boosts.add([20]);

it('never favours a first or a single token', () => {
  expect(boosts.after([])).toEqual([]);
  expect(boosts.after([1, 2, 3])).toEqual([]);
  expect(boosts.after([20])).toEqual([]);
});

it('favours what carries on a term that has begun', () => {
  expect(boosts.after([3, 10]).sort()).toEqual([11, 15]);
  expect(boosts.after([3, 10, 11])).toEqual([12]);
  expect(boosts.after([10, 11, 12])).toEqual([]);
});
