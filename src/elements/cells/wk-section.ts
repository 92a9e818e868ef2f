import { css, html, LitElement, nothing } from 'lit';
import { live } from 'lit/directives/live.js';
import { sayDay, weekStart } from '../../model/checks/bedSeries.ts';
import type { ShedResult } from '../../model/checks/check.ts';
import { toElement } from '../../plots/drawing.ts';
import { drawnIn, figureIn } from '../../plots/figureIn.ts';
import { sceneAt } from '../../plots/scene.ts';
import { sectionDrawing, sectionFigure, sectionFinding } from '../../plots/section.ts';
import type { Coefficient } from '../../tables/coefficient.ts';
import { wordsIn } from '../../units/inWords.ts';
import type { UnitSystem } from '../../units/quantities.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-figure.ts';

/** Weeks on paper, where nothing can be dragged. */
const PRINTED = [1, 9, 17, 26];
const PRINT_WIDTH = 330;
let nextId = 0;

/** The shed in section with a slider over the weeks; on paper four weeks side by side. */
export class WkSection extends LitElement {
  static override properties = {
    result: { attribute: false },
    coefficients: { attribute: false },
    system: {},
    week: { type: Number },
  };

  static override styles = [
    shared,
    css`
      label {
        display: grid;
        grid-template-columns: auto minmax(8rem, 24rem);
        gap: 0.2rem 0.8rem;
        align-items: center;
        margin: 0.2rem 0 0.6rem;
      }
      input[type='range'] {
        width: 100%;
        min-height: 2.25rem;
        accent-color: var(--ink);
      }
      .multiples {
        display: none;
      }
      @media (max-width: 30rem) {
        label {
          grid-template-columns: 1fr;
        }
      }
      @media print {
        wk-figure {
          display: none;
        }
        .multiples {
          display: grid;
          grid-template-columns: 1fr 1fr;
          gap: 0.8rem;
        }
        .multiples figure {
          margin: 0;
          break-inside: avoid;
          font-size: 0.8rem;
        }
      }
    `,
  ];

  declare result: ShedResult | undefined;
  declare coefficients: ReadonlyMap<string, Coefficient> | undefined;
  declare system: UnitSystem;
  declare week: number;

  #ids = `wk-section-${nextId++}`;
  #beforePrint = () => this.#drawMultiples();

  constructor() {
    super();
    this.system = 'metric';
    this.week = 26;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('beforeprint', this.#beforePrint);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('beforeprint', this.#beforePrint);
  }

  #drawMultiples(): void {
    const holder = this.renderRoot.querySelector('.multiples');
    const { result, coefficients } = this;
    if (!holder || !result || !coefficients) return;
    // Where nothing rises one picture says it all.
    const first = sceneAt({ ...result, coefficients }, PRINTED[0]);
    const weeks = typeof first !== 'string' && !first.bedded ? [PRINTED[PRINTED.length - 1]] : PRINTED;
    const figures = weeks.flatMap((week) => {
      const scene = sceneAt({ ...result, coefficients }, week);
      if (typeof scene === 'string' || (scene.week !== week && week !== weeks[weeks.length - 1])) return [];
      const figure = document.createElement('figure');
      const caption = document.createElement('figcaption');
      caption.textContent = wordsIn(sectionFinding(scene), this.system);
      const drawing = sectionDrawing(scene, PRINT_WIDTH, `${this.#ids}-print-${week}`);
      figure.append(drawnIn(toElement(drawing, sectionFinding(scene)), this.system), caption);
      return [figure];
    });
    holder.replaceChildren(...figures);
  }

  protected override render() {
    const { result, coefficients } = this;
    if (!result || !coefficients?.size) return nothing;
    const input = { ...result, coefficients };
    const scene = sceneAt(input, this.week);
    const figure = figureIn(sectionFigure(input, this.week, this.#ids), this.system);
    if (typeof scene === 'string')
      return html`<wk-figure heading=${`Section: ${result.name}`} .figure=${figure}></wk-figure>`;
    const said = `week ${scene.week} of ${scene.weeks}, from ${sayDay(weekStart(result.scenario, scene.week))}`;
    return html`<h3>Section: ${result.name}</h3>
      <label class="screen">
        <span>Week <strong>${scene.week}</strong> of ${scene.weeks}</span>
        <input
          type="range"
          min="1"
          max=${scene.weeks}
          step="1"
          .value=${live(String(scene.week))}
          aria-valuetext=${said}
          @input=${(event: Event) => {
            this.week = Number((event.target as HTMLInputElement).value);
          }}
        />
      </label>
      <wk-figure .figure=${figure}></wk-figure>
      <div class="multiples"></div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'wk-section': WkSection;
  }
}

customElements.define('wk-section', WkSection);
