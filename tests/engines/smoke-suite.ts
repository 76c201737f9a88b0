import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { isAsked } from '../browser/short-run.ts';
import { readPages } from '../site/built-site.ts';
import { waitUntil, type Engine, type EngineChoice } from './engine.ts';
import { openListeningSite, type ListeningSite } from './listening-site.ts';
import { lookAtPage } from './look-at-page.ts';
import { placesOfTexts } from './places-of-texts.ts';

// What has gone wrong in one engine and not in another: widths, restored fields, keys. All else is asked
// in tests/browser.

/** The test command looks at one page of so many, by turns; `npm run test:engines` looks at all of them. */
const PAGE_TURNS = 6;

/** Asks, in each browser that the system has, whether the book works in it. */
export function smokeSuite(choice: EngineChoice): void {
  if (choice.missing.length > 0) {
    // eslint-disable-next-line no-console -- who runs the tests must see what they do not cover
    console.warn(
      `\n!!! ${choice.name} IS NOT TESTED: missing ${choice.missing.join(', ')}. To install: ${choice.install}.\n`,
    );
  }
  describe.skipIf(choice.missing.length > 0)(choice.name, () => {
    let site: ListeningSite;
    let engine: Engine;
    const opened: { close(): unknown }[] = [];
    beforeAll(async () => {
      site = await openListeningSite();
      opened.push(site);
      engine = await choice.start();
      opened.push(engine);
    });
    /** Closes what may have crashed. */
    const shut = async (each: { close(): unknown }): Promise<void> => {
      try {
        await each.close();
      } catch {
        // It is gone already.
      }
    };
    // An engine may crash or hang by itself; then it is started again, aloud, and the test runs again.
    beforeEach(async () => {
      const isAlive = await engine.run(() => true).catch(() => false);
      if (isAlive) return;
      process.stderr.write(`${choice.name} crashed and is started again\n`);
      await shut(engine);
      engine = await choice.start();
      opened.push(engine);
    });
    afterAll(async () => {
      for (const each of opened.toReversed()) await shut(each);
    });

    const live = (form: string): Promise<void> =>
      waitUntil(
        engine,
        `${form} comes to life`,
        (selector) => document.querySelector<HTMLElement>(selector)?.dataset['ready'] === 'true',
        form,
      );
    /**
     * Leaves the page and waits for the next. Not by the drivers' own commands, which wait for ever for a
     * page that comes out of the memory for the way back.
     */
    const leave = async (how: 'open' | 'reload' | 'back', url: string): Promise<void> => {
      await engine.run(
        (way, address) => {
          // The mark is gone in a page that was loaded anew, and in another page.
          Object.assign(window, { isLeft: true });
          // Later: a driver may wait in vain for the answer of a page that is gone.
          setTimeout(() => {
            if (way === 'open') location.assign(address);
            else if (way === 'reload') location.reload();
            else history.back();
          }, 10);
        },
        how,
        url,
      );
      await waitUntil(
        engine,
        `${how} ${url}`,
        (way, address) =>
          document.readyState === 'complete' &&
          location.href.startsWith(address) &&
          (way === 'back' || !('isLeft' in window)),
        how,
        url,
      );
    };
    const here = (): Promise<string> => engine.run(() => location.href);
    const open = (address: string): Promise<void> => leave('open', `${site.origin}${address}`);
    const reload = async (): Promise<void> => leave('reload', await here());
    /** To another page and back, with whatever memory the engine has of this one. */
    const thereAndBack = async (): Promise<void> => {
      const url = await here();
      await open('/frame');
      await leave('back', url);
    };
    const focus = (field: string): Promise<void> =>
      engine.run((selector) => {
        const found = document.querySelector<HTMLInputElement>(selector);
        if (found === null) throw new Error(`no ${selector}`);
        for (let box = found.parentElement; box !== null; box = box.parentElement) {
          if (box instanceof HTMLDetailsElement) box.open = true;
        }
        found.focus();
        if (found instanceof HTMLInputElement) found.select();
      }, field);
    const valueOf = (field: string): Promise<string> =>
      engine.run(
        (selector) => document.querySelector<HTMLInputElement>(selector)?.value ?? 'none',
        field,
      );
    /** Types over what stands in a field. An engine that fills it late takes the selection away: then again. */
    const type = async (field: string, text: string): Promise<void> => {
      for (let tries = 0; tries < 3; tries += 1) {
        await focus(field);
        await engine.press(text);
        if ((await valueOf(field)) === text) return;
      }
    };
    const expectValue = (field: string, text: string): Promise<void> =>
      waitUntil(
        engine,
        `${field} says ${text}`,
        (selector, wanted) => document.querySelector<HTMLInputElement>(selector)?.value === wanted,
        field,
        text,
      );
    const textOf = (part: string): Promise<string> =>
      engine.run((selector) => document.querySelector(selector)?.textContent ?? '', part);

    /** Every field of a form says what its sums were made from. */
    const expectAgreement = async (form: string): Promise<void> => {
      const { fields, summed } = await engine.run((selector) => {
        const found = document.querySelector(selector);
        const link = found?.querySelector<HTMLAnchorElement>('.sheet-link')?.href ?? '';
        const all = found?.querySelectorAll<HTMLInputElement>('.sheet-inputs :is(input, select)');
        return {
          fields: [...(all ?? [])].map(({ name, value }) => `${name}=${value}`),
          summed: [...new URL(link).searchParams].map(([name, value]) => `${name}=${value}`),
        };
      }, form);
      expect(fields.length).toBeGreaterThan(3);
      expect(summed).toEqual(expect.arrayContaining(fields));
    };

    test('every page is clean, and no wider than its window', async () => {
      await open('/frame');
      site.takeFailed();
      const found: string[] = [];
      const asked = readPages().filter((_, index) => isAsked(index, PAGE_TURNS));
      expect(asked.length).toBeGreaterThan(5);
      for (const { address } of asked) {
        const faults = await engine.run(lookAtPage, address);
        found.push(...faults.map((fault) => `${address} ${fault}`));
      }
      expect([...found, ...site.takeFailed()]).toEqual([]);
    });

    /** Opens the chapter on matching and types an exposure into its sheet. */
    const openWithExposure = async (form: string, exposure: string): Promise<void> => {
      await open('/gate/matching/');
      await type(`${form} [name="exposureSeconds"]`, exposure);
      await live(form);
    };

    test('a fraction that is typed is what the sums are made from', async () => {
      const form = '[data-instance="flash-match"]';
      await openWithExposure(form, '1/54');
      await expectValue(`${form} [name="exposureSeconds"]`, '1/54');
      // One flash of 18 × 3 in a second: no ripple. The book's own 1/50 s has one.
      await waitUntil(engine, 'no ripple at 1/54', () =>
        /^0\s%$/u.test(
          document.querySelector('#flash-match-answer-ripplePercent .answer-value')?.textContent ??
            '',
        ),
      );
      await expectAgreement(form);
    });

    test('the way back finds the field as it was left, with its sums', async () => {
      const form = '[data-instance="flash-match"]';
      await openWithExposure(form, '1/60');
      await thereAndBack();
      await live(form);
      await expectValue(`${form} [name="exposureSeconds"]`, '1/60');
      await expectAgreement(form);
    });

    test('a choice that was made survives a reload and the way back, with its verdict', async () => {
      const form = '[data-instance="condition-triage"]';
      await open('/reel/condition/');
      await focus(`${form} [name="base"]`);
      await engine.press('nitrate is s');
      await expectValue(`${form} [name="base"]`, 'nitrate-suspected');
      const leaving = { reload, thereAndBack };
      for (const [how, leaveAndReturn] of Object.entries(leaving)) {
        await live(form);
        expect(await textOf(`${form} .verdict`), how).toContain('nitrate');
        await expectAgreement(form);
        await leaveAndReturn();
      }
      await live(form);
      await expectValue(`${form} [name="base"]`, 'nitrate-suspected');
      expect(await textOf(`${form} .verdict`)).toContain('nitrate');
      await expectAgreement(form);
    });

    test('a change to the numbers of a link does not drop them at a reload', async () => {
      const form = '[data-instance="whole-frames"]';
      await open('/file/whole-frames/?w=whole-frames&cameraFps=50#whole-frames');
      await live(form);
      await focus(`${form} [name="running"]`);
      const before = await valueOf(`${form} [name="running"]`);
      await engine.press('hold');
      const after = await valueOf(`${form} [name="running"]`);
      expect(after).not.toBe(before);
      await reload();
      await live(form);
      await expectValue(`${form} [name="running"]`, after);
      await expectValue(`${form} [name="cameraFps"]`, '50');
      expect(await textOf(`${form} .origin-status`)).toContain('link');
      await expectAgreement(form);
    });

    test('a field that was empty at first is not emptied on the way back', async () => {
      const cases = [
        [
          '/reel/gauges/',
          '[data-instance="gauge-finder"] [name="perforationHeightMillimetres"]',
          '1.83',
        ],
        ['/bench/', 'bench-form [name="projector.filmFps"]', '16 2/3'],
        ['/job-sheet/', '[data-blank]', 'Reel 7'],
        ['/trainee/practice/', 'practice-sheet input', '54'],
        ['/search/', '#search-query', 'flicker'],
      ] as const;
      for (const [address, field, text] of cases) {
        await open(address);
        // Others come to life at the first touch.
        if (address === '/bench/' || address === '/search/') {
          await waitUntil(
            engine,
            `${address} is live`,
            (selector) => {
              const found = document.querySelector<HTMLInputElement>(selector);
              const part = found?.closest<HTMLElement>('bench-form, [data-plan], [data-search]');
              return part?.matches('[data-search]') === true
                ? found?.disabled === false
                : part?.dataset['ready'] === 'true';
            },
            field,
          );
        }
        await type(field, text);
        await expectValue(field, text);
        if (address === '/job-sheet/') await live('[data-plan]');
        await thereAndBack();
        // Practice draws new numbers where the engine keeps no page: an old answer would be wrong there.
        await waitUntil(
          engine,
          `${address} says ${text} again`,
          (selector, wanted) => {
            const found = document.querySelector<HTMLInputElement>(selector);
            return (
              found?.value === wanted ||
              (found?.value === '' &&
                found.closest('practice-sheet') !== null &&
                found.closest<HTMLElement>('practice-sheet')?.dataset['ready'] !== 'true')
            );
          },
          field,
          text,
        );
      }
    });

    test('what is written on a blank line of the job sheet survives a reload', async () => {
      await open('/job-sheet/');
      await type('[data-blank]', 'Reel 7');
      await live('[data-plan]');
      await reload();
      await expectValue('[data-blank]', 'Reel 7');
    });

    test('a term of the glossary shows that it is a link', async () => {
      await open('/gate/matching/');
      const lines = await engine.run(() =>
        [...document.querySelectorAll('.term')].map(
          (term) => getComputedStyle(term).textDecorationLine,
        ),
      );
      expect(lines.length).toBeGreaterThan(5);
      expect(new Set(lines)).toEqual(new Set(['underline']));
    });

    test('the bench cards print at their full size, each sheet like the first', async (context) => {
      if (engine.print === undefined) {
        context.skip(`the driver of ${choice.name} cannot print`);
        return;
      }
      await open('/cards/');
      await live('[data-cards-tools]');
      const count = await engine.run(() => document.querySelectorAll('.card').length);
      const sheets = await placesOfTexts(await engine.print());
      expect(sheets.length).toBe(Math.ceil(count / 4));
      // Titles of 12 points begin 7 mm inside cards that are 105 mm wide.
      for (const [index, texts] of sheets.entries()) {
        const titles = texts.filter(({ text, size }) => text !== '' && Math.round(size) === 12);
        const lefts = titles.map(({ left }) => Math.round(left));
        expect(Math.min(...lefts), `sheet ${index + 1}, left`).toBe(7);
        const right = lefts.filter((left) => left >= 105);
        if (index * 4 + 1 < count)
          expect(Math.min(...right), `sheet ${index + 1}, right`).toBe(112);
      }
    });
  });
}
