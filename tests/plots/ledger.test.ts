import { describe, expect, it } from 'vitest';
import { dropped, ledgerFigure, ledgerFinding, ledgerParts, NUTRIENTS } from '../../src/plots/ledger.ts';
import { evaluation, reading } from '../browser/fixtures/evaluation.ts';

const { scenarios } = evaluation;

describe('ledger', () => {
  it.each(NUTRIENTS)(
    'lays %s end to end, what is kept first, to what was dropped and brought in',
    (nutrient) => {
      const parts = ledgerParts(scenarios, nutrient);
      for (const { name, values } of scenarios) {
        const own = parts.filter((part) => part.scenario === name);
        expect(own[0]).toMatchObject({ label: 'kept', from: 0 });
        own.slice(1).forEach((part, k) => {
          expect(part.from).toBe(own[k].to);
        });
        expect(own[own.length - 1].to).toBeCloseTo(
          dropped(values, nutrient) + (values[`${nutrient}BroughtKg`] ?? 0),
          9,
        );
      }
    },
  );

  it('says its finding with the share kept and the largest loss of the worst', () => {
    expect(ledgerFinding(scenarios, 'nitrogen', reading)).toBe(
      '“Deep bed” keeps 322 kg of nitrogen, 56 % of what the animals dropped; “Paddock” keeps least, 260 kg (41 %); its largest loss is drainage below the roots, 230 kg.',
    );
  });

  it('has a row in the table for every way out', () => {
    const { table } = ledgerFigure(scenarios, 'nitrogen', reading);
    expect(table.head).toEqual(['', 'Paddock', 'Slats', 'Deep bed']);
    expect(table.rows).toEqual([
      ['dropped by the animals and in wasted feed', '640', '572', '572'],
      ['kept', '260', '310', '322'],
      ['to the air as ammonia', '60', '205', '130'],
      ['leached below the roots', '230', '40', '35'],
      ['run off over the ground', '45', '0', '0'],
      ['to the air as nitrous oxide', '10', '5', '12'],
      ['to the air as plain nitrogen', '35', '12', '73'],
      ['of what is there: in a crop or ready for it', '—', '—', '55'],
      ['of what is there: bound in soil or compost', '—', '—', '360'],
      ['of what is there: at risk of the next drainage', '—', '—', '5'],
      ['brought in with bedding', '—', '—', '98'],
    ]);
  });

  it('tells every loss apart by a pattern of its own', () => {
    const patterns = ledgerFigure(scenarios, 'nitrogen', reading).legend.map((entry) => entry.pattern);
    expect(new Set(patterns).size).toBe(patterns.length);
  });

  it('says so when there is nothing to follow', () => {
    const empty = scenarios.map((s) => ({
      ...s,
      values: {
        ...s.values,
        nitrogenExcretedKg: 0,
        nitrogenInKg: 0,
        nitrogenKeptKg: 0,
        nitrogenBroughtKg: 0,
        nitrogenAmmoniaKg: 0,
        nitrogenLeachedKg: 0,
        nitrogenRunoffKg: 0,
        nitrogenNitrousKg: 0,
        nitrogenDinitrogenKg: 0,
      },
    }));
    const figure = ledgerFigure(empty, 'nitrogen', reading);
    expect(figure.draw).toBeNull();
    expect(figure.finding).toContain('nothing to follow');
  });
});
