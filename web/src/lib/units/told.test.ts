import { describe, expect, it } from 'vitest';
import { chosenFirst, inSentence, told } from './told.ts';

describe('words of the server', () => {
  it('stay as they are in US units, but for a second unit in brackets', () => {
    expect(told('Knee walls boarded, 3 ft', 'us')).toBe('Knee walls boarded, 3 ft');
    expect(told('House B was kept 0.6 F (0.3 K) warmer', 'us')).toBe('House B was kept 0.6 F warmer');
    expect(told('9.1 m (30 ft) wide', 'us')).toBe('30 ft wide');
  });
  it('turn lengths, temperatures and their differences', () => {
    expect(told('Knee walls boarded, 3 ft', 'si')).toBe('Knee walls boarded, 0.91 m');
    expect(told('Edge of the floor insulated, 2 ft down', 'si')).toBe('Edge of the floor insulated, 0.61 m down');
    expect(told('Night set point 2 F lower', 'si')).toBe('Night set point 1.1 K lower');
    expect(told('February to May, 60 F by night', 'si')).toBe('February to May, 16 C by night');
    expect(told('over 15 F of outside range', 'si')).toBe('over 8.3 K of outside range');
    expect(told('kept 0.6 F (0.3 K) warmer', 'si')).toBe('kept 0.3 K warmer');
    expect(told('under 60 F (15.6 C) outside', 'si')).toBe('under 15.6 C outside');
  });
  it('turn prices and amounts of fuel, and leave money alone', () => {
    // 3.785411784 L a gallon, 28.316846592 m³ a thousand cubic feet: exact by definition
    expect(told('$2,130 on natural gas at $8.43/mcf ($1,960 to $2,310)', 'si')).toBe(
      '$2,130 on natural gas at $0.298/m³ ($1,960 to $2,310)',
    );
    expect(told('propane at $2.52/gal; $0.13/kWh', 'si')).toBe('propane at $0.666/L; $0.13/kWh');
    expect(told('a margin of $1.60 a gallon', 'si')).toBe('a margin of $0.423 a L');
    expect(told('100 to 300 gallons of soap', 'si')).toBe('380 to 1,100 L of soap');
    expect(told('capped at $2.92 a gal for its fair fee, $2,236 a season', 'si')).toBe(
      'capped at $0.771 a L for its fair fee, $2,236 a season',
    );
  });
  it('keep names that only look like units', () => {
    expect(told('house F and 3 of 4', 'si')).toBe('house F and 3 of 4');
  });
});

it('says the unit of the switch first where a fault tells both', () => {
  const fault = 'The width of -3 m (-9.8 ft) is outside 1.83 to 60.96 m (6 to 200 ft).';
  expect(chosenFirst(fault, 'us')).toBe('The width of -9.8 ft (-3 m) is outside 6 to 200 ft (1.83 to 60.96 m).');
  expect(chosenFirst(fault, 'si')).toBe(fault);
  expect(chosenFirst('Give 2 to 400 m (6.6 to 1,312 ft).', 'us')).toBe('Give 6.6 to 1,312 ft (2 to 400 m).');
  expect(chosenFirst('input of 3.52 W (12 Btu/h) cannot be', 'us')).toBe('input of 12 Btu/h (3.52 W) cannot be');
  expect(chosenFirst('A length of 1E+300 m (3.28E+300 ft) is outside', 'us')).toBe('A length of 3.28E+300 ft (1E+300 m) is outside');
  expect(chosenFirst('The set points, 60 C (140 F) by night', 'us')).toBe('The set points, 140 F (60 C) by night');
  expect(chosenFirst('60 F (15.6 C)', 'si')).toBe('15.6 C (60 F)');
});

it('begins each part of a title small inside a sentence, and leaves units and names', () => {
  expect(inSentence('Night set point 2 F lower')).toBe('night set point 2 F lower');
  expect(inSentence('End walls insulated, four fifths; Knee walls boarded, 3 ft')).toBe(
    'end walls insulated, four fifths; knee walls boarded, 3 ft',
  );
  expect(inSentence('No. 2 oil, on its index')).toBe('No. 2 oil, on its index');
});
