import { expect, test } from 'vitest';
import { PASTED, typedOver } from './upload.ts';

test('a text keeps the name of its file when it is typed over', () => {
  expect(typedOver(PASTED)).toBe(PASTED);
  expect(typedOver('station.csv')).toBe('station.csv, edited');
  expect(typedOver(typedOver('station.csv'))).toBe('station.csv, edited');
});
