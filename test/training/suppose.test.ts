import { describe, expect, it } from 'vitest';
import { suppose, supposeBefore } from '../../src/training/suppose.js';
import { byId, worked } from './book.js';

const dry = byId('hard-as-the-road');
const green = byId('spongy-green');

describe('a what-if', () => {
  it('before the commit tells only which looks would be worth more or less', () => {
    const [head, ...rest] = suppose(green, [], 'moss cover 0');
    expect(head).toBe('Suppose for now: moss cover, 0 %.');
    expect(rest.join(' ')).toMatch(/no longer worth a look:.*tank size/);
  });

  it('before the commit never drops a look for safety', () => {
    for (const each of worked) {
      const safe = each.looks.filter(
        ({ id, safety }) => safety === true || each.lesson.dangers.some(({ look }) => look === id),
      );
      // What this lawn turns on, and the light, which can make nearly all else idle.
      const turning = each.looks.filter(({ id }) => each.good.has(id) || id === 'sunHoursPerDay');
      for (const question of turning) {
        const { kind, options = [] } = question;
        if (kind !== 'choice' && kind !== 'yes-no' && question.id !== 'sunHoursPerDay') continue;
        const answers =
          kind === 'choice' ? options.map(({ value }) => value) : kind === 'yes-no' ? [true, false] : [0, 1];
        for (const answer of answers) {
          const dropped = supposeBefore(each, [], question, answer)
            .filter((line) => line.startsWith('Then no longer worth a look:'))
            .flatMap((line) => line.replace(/^.*?: |\.$/g, '').split('; '));
          for (const { label } of safe)
            expect(dropped, `${each.lesson.id}: ${question.label} ${answer}`).not.toContain(label);
        }
      }
    }
  });

  it('of one hour of sun leaves the gas pipe in the yard worth a look', () => {
    const said = suppose(byId('bakehouse-yard'), [], 'sun 1').join(' ');
    expect(said).toMatch(/no longer worth a look/);
    expect(said).not.toMatch(/buried|dog on|children|slope|trees/);
  });

  it('afterwards tells which findings, steps and verdict come and go', () => {
    const said = suppose(dry, 'over', 'last rain yesterday').join(' ');
    expect(said).toMatch(/Not found then:.*too dry for the screwdriver/);
    expect(suppose(green, 'over', 'moss cover 0').join(' ')).toMatch(/fall away:.*Treat the moss/);
    expect(suppose(green, 'over', 'hours of sun 1').join(' ')).toMatch(
      /verdict would be: Too dark for grass/,
    );
  });

  it('takes an area as a figure or as sides, whichever way the case gives it', () => {
    for (const typed of ['area 84', 'area 12 x 7', 'area 12 x 7 - 2 x 1'])
      for (const each of [dry, green])
        expect(suppose(each, 'over', typed).join(' ')).toMatch(/Suppose for now: area/);
  });

  it('says so when nothing would change', () => {
    expect(suppose(dry, 'over', 'children on the lawn yes').join(' ')).toMatch(/Nothing would change/);
  });

  it.each([
    ['', /Name a look and an answer/],
    ['screwdriver', /Name a look and an answer/],
    ['xyzzy easy', /Name a look and an answer/],
    ['screwdriver sideways', /./],
    ['moss cover 400 %', /./],
  ])('that makes no sense, such as "%s", is refused in words', (typed, says) => {
    const said = suppose(dry, [], typed);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(says);
  });

  it('can be had of every choice in every case', () => {
    for (const each of worked) {
      for (const question of each.looks.filter(({ kind }) => kind === 'choice' || kind === 'yes-no')) {
        const answers =
          question.kind === 'choice' ? (question.options ?? []).map(({ label }) => label) : ['yes', 'no'];
        for (const answer of answers) {
          const said = suppose(each, 'over', `${question.label} ${answer}`);
          expect(said.length, `${each.lesson.id}: ${question.label} ${answer}: ${said}`).toBeGreaterThan(1);
        }
      }
    }
  });
});
