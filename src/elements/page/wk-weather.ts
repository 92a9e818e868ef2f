import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { readWeather, type WeatherFile, type WeatherForm, writeWeather } from '../../tables/weather.ts';
import {
  RAIN_UNITS,
  type RainUnit,
  type Role,
  TEMPERATURE_UNITS,
  type TemperatureUnit,
  type WeatherGuess,
} from '../../tables/weatherGuess.ts';
import type { Climate } from '../../tables/weatherJoin.ts';
import {
  type BadDays,
  type Gap,
  LONGEST_FILLED_GAP,
  type RainDay,
  type WeatherSeries,
} from '../../tables/weatherSeries.ts';
import { type Asked, ask } from '../parts/events.ts';
import { offer } from '../parts/offer.ts';
import { shared } from '../parts/style.ts';
import '../parts/wk-problems.ts';

const FORMS: Readonly<Record<WeatherForm, string>> = {
  own: 'daily values in winterkeep’s own plain form',
  ghcnFixedWidth: 'GHCN-Daily, fixed width',
  ghcnCsv: 'GHCN-Daily as CSV',
  guessed: 'a table of somebody else’s; this is what its columns seem to be',
};
const ROLE_WORDS: Readonly<Partial<Record<Role, string>>> = {
  date: 'Date',
  rain: 'Rain and melted snow',
  min: 'Lowest of the day',
  max: 'Highest of the day',
  mean: 'Mean of the day',
  station: 'Station',
};
const RAIN_WORDS: Readonly<Record<RainUnit, string>> = {
  mm: 'mm',
  tenthsMm: 'tenths of a mm',
  inch: 'inches',
  cm: 'cm',
};
const TEMPERATURE_WORDS: Readonly<Record<TemperatureUnit, string>> = {
  celsius: '°C',
  tenthsCelsius: 'tenths of °C',
  fahrenheit: '°F',
  kelvin: 'kelvin',
};
const ORDER_WORDS = { ymd: 'year, month, day', dmy: 'day, month, year', mdy: 'month, day, year' } as const;
const MEASURE_WORDS = { rainMm: 'rain', minC: 'lowest', maxC: 'highest', meanC: 'mean' } as const;
/** Larger files hold no two hundred years of days and would only freeze the page. */
const LARGEST_BYTES = 20_000_000;
/** Gaps told one by one. */
const GAPS = 8;

/**
 * A daily weather file is dropped or chosen: what its columns and units seem to be is shown and can be corrected;
 * gaps are told, with how the short ones were filled.
 *
 * @fires wk-weather-rain - the keeper takes the rain of a gauge with the temperature of a climate
 * @fires wk-weather-file - the keeper takes the series: detail `{ name, text, series }`, text in our own form
 */
export class WkWeather extends LitElement {
  static override properties = {
    file: { state: true },
    name: { state: true },
    refusal: { state: true },
    over: { state: true },
    climates: { attribute: false },
    climate: { state: true },
  };

  static override styles = [
    shared,
    css`
      .drop {
        border: 2px dashed var(--quiet);
        border-radius: 6px;
        padding: 1rem;
        max-width: 42rem;
      }
      .drop.over {
        background: var(--ground);
        border-style: solid;
      }
      .guess {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr));
        gap: 0.6rem 1rem;
        margin: 0.6rem 0;
      }
      .guess label {
        display: grid;
        gap: 0.15rem;
        font-size: 0.9rem;
      }
      .drop input {
        max-width: 100%;
      }
      .guess select {
        max-width: 100%;
      }
      ul {
        margin: 0.2rem 0 0.8rem;
        padding-left: 1.2rem;
        max-width: 42rem;
      }
    `,
  ];

  declare file: WeatherFile | undefined;
  declare name: string;
  declare refusal: string;
  declare over: boolean;
  /** Shipped climates, the nearest first, for a gauge that has rain alone. */
  declare climates: readonly Climate[];
  /** The climate chosen, by its file. */
  declare climate: string;
  #text = '';

  constructor() {
    super();
    this.name = '';
    this.refusal = '';
    this.over = false;
    this.climates = [];
    this.climate = '';
  }

  /** Reads a file; also for a page that takes the drop itself. */
  async take(file: File): Promise<void> {
    this.over = false;
    this.file = undefined;
    this.refusal = '';
    this.name = file.name;
    if (file.size > LARGEST_BYTES) {
      this.refusal = `“${file.name}” has ${(file.size / 1e6).toFixed(0)} MB; a weather file of two hundred years has less than ${LARGEST_BYTES / 1e6} MB. Choose one with one line a day.`;
      return;
    }
    this.#text = await file.text();
    this.file = readWeather(file.name, this.#text);
  }

  #again(guess: WeatherGuess): void {
    this.file = readWeather(this.name, this.#text, { guess });
  }

  #select<T extends string>(
    label: string,
    value: T,
    options: readonly (readonly [T, string])[],
    set: (value: T) => void,
  ): TemplateResult {
    return html`<label>${label}
      <select class="field" @change=${(event: Event) => set((event.target as HTMLSelectElement).value as T)}>
        ${options.map(([key, words]) => html`<option value=${key} ?selected=${key === value}>${words}</option>`)}
      </select>
    </label>`;
  }

  #guess(guess: WeatherGuess): TemplateResult {
    const count = Math.max(guess.names.length, ...Object.values(guess.columns).map((at) => (at ?? -1) + 1));
    const columns = [
      ['', 'none'],
      ...Array.from({ length: count }, (_, k) => [String(k), guess.names[k] || `column ${k + 1}`]),
    ] as const as readonly (readonly [string, string])[];
    const roles = (Object.keys(ROLE_WORDS) as Role[]).filter(
      (role) => role !== 'date' || guess.columns.year === undefined,
    );
    const setColumn = (role: Role, at: string) => {
      const { [role]: _, ...rest } = guess.columns;
      this.#again({ ...guess, columns: at === '' ? rest : { ...rest, [role]: Number(at) } });
    };
    return html`<div class="guess" role="group" aria-label="Columns and units">
        ${roles.map((role) => this.#select(ROLE_WORDS[role] ?? role, String(guess.columns[role] ?? ''), columns, (at) => setColumn(role, at)))}
        ${this.#select(
          'Rain is in',
          guess.rainUnit,
          RAIN_UNITS.map((unit) => [unit, RAIN_WORDS[unit]] as const),
          (rainUnit) => this.#again({ ...guess, rainUnit }),
        )}
        ${this.#select(
          'Temperature is in',
          guess.temperatureUnit,
          TEMPERATURE_UNITS.map((unit) => [unit, TEMPERATURE_WORDS[unit]] as const),
          (temperatureUnit) => this.#again({ ...guess, temperatureUnit }),
        )}
        ${this.#select(
          'Dates are written',
          guess.dateOrder,
          (['ymd', 'dmy', 'mdy'] as const).map((order) => [order, ORDER_WORDS[order]] as const),
          (dateOrder) => this.#again({ ...guess, dateOrder }),
        )}
      </div>
      <details>
        <summary>Why it was taken so</summary>
        <ul>${guess.reasons.map((reason) => html`<li>${reason}</li>`)}</ul>
      </details>`;
  }

  #gaps(gaps: readonly Gap[], words: string): TemplateResult | typeof nothing {
    if (gaps.length === 0) return nothing;
    const days = gaps.reduce((sum, gap) => sum + gap.days, 0);
    return html`<p>${words} (${days} ${days === 1 ? 'day' : 'days'}):</p>
      <ul>
        ${gaps.slice(0, GAPS).map(({ key, from, to, days: n }) => html`<li>${MEASURE_WORDS[key]}, ${n === 1 ? from : `${from} to ${to}`}</li>`)}
        ${gaps.length > GAPS ? html`<li>and ${gaps.length - GAPS} more</li>` : nothing}
      </ul>`;
  }

  #series(series: WeatherSeries): TemplateResult {
    const { days, filled, gaps } = series;
    const [first, last] = [days[0], days[days.length - 1]];
    const rain = days.reduce((sum, day) => sum + day.rainMm, 0) / (days.length / 365.25);
    const [low, high] = days.reduce(
      ([a, b], day) => [Math.min(a, day.minC), Math.max(b, day.maxC)],
      [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
    );
    return html`<p>
        <strong>${series.label}</strong>: ${days.length} days from ${first.date} to ${last.date}, ${Math.round(rain)} mm of rain a year, ${low.toFixed(0)} to ${high.toFixed(0)} °C. If that is not your
        climate, a column or a unit is wrong.
      </p>
      ${this.#gaps(filled, `Gaps of up to ${LONGEST_FILLED_GAP} days are filled: temperature straight from the day before to the day after, rain with the mean day of that month in this file`)}
      ${this.#gaps(gaps, 'Longer gaps are left, and a winter with one in it is not used')}
      <button type="button" class="plain" @click=${() => this.#save(series)}>Save as read</button>
      <button type="button" class="plain" @click=${() => this.#use(series)}>Use this weather</button>`;
  }

  /** Single days that cannot be right need not cost the whole file. */
  #mend(): TemplateResult {
    const again = (bad: BadDays) => {
      this.file = readWeather(this.name, this.#text, { guess: this.file?.guess, bad });
    };
    return html`<p>All the other days can be read. What shall become of the lines above?</p>
      <p>
        <button type="button" class="plain" @click=${() => again('bridge')}>Bridge them: take them as not measured</button>
        <button type="button" class="plain" @click=${() => again('leaveOut')}>Leave their winters out</button>
      </p>`;
  }

  #rain(rain: readonly RainDay[]): TemplateResult {
    const chosen = this.climates.find(({ file }) => file === this.climate) ?? this.climates[0];
    const [first, last] = [rain[0]?.date, rain[rain.length - 1]?.date];
    return html`<p>
        The file has rain and no temperature: ${rain.length} days from ${first} to ${last}. Its rain can be joined with the temperature of a
        shipped climate, day for day. That temperature is invented, not measured on your farm: frost, snow and thaw come from it.
      </p>
      ${this.#select(
        'Temperature of',
        chosen?.file ?? '',
        this.climates.map(
          ({ file, label, latitudeDeg }) => [file, `${label}, about ${latitudeDeg}° N`] as const,
        ),
        (file) => {
          this.climate = file;
        },
      )}
      <button type="button" class="plain" ?disabled=${!chosen} @click=${() => chosen && ask(this, 'wk-weather-rain', { name: this.name, rain, climate: chosen })}>Use this rain</button>`;
  }

  #use(series: WeatherSeries): void {
    const detail: Asked['wk-weather-file'] = {
      name: this.#csvName(),
      text: withGaps(writeWeather(series), series),
      series,
    };
    ask(this, 'wk-weather-file', detail);
  }

  #csvName(): string {
    return `${this.name.replace(/\.[^.]+$/, '')}.csv`;
  }

  #save(series: WeatherSeries): void {
    offer(new Blob([withGaps(writeWeather(series), series)], { type: 'text/csv' }), this.#csvName());
  }

  protected override render() {
    const { file, refusal } = this;
    return html`<div
        class="drop ${this.over ? 'over' : ''}"
        @dragover=${(event: DragEvent) => {
          event.preventDefault();
          this.over = true;
        }}
        @dragleave=${() => {
          this.over = false;
        }}
        @drop=${(event: DragEvent) => {
          event.preventDefault();
          // The page takes dropped files for notebooks.
          event.stopPropagation();
          const dropped = event.dataTransfer?.files[0];
          if (dropped) void this.take(dropped);
        }}
      >
        <label>Drop a file of daily weather here, or choose one: your own gauge, a weather service’s download, GHCN-Daily. It stays on this machine.
          <input type="file" accept=".csv,.txt,.dly,.tsv" @change=${(event: Event) => {
            const chosen = (event.target as HTMLInputElement).files?.[0];
            if (chosen) void this.take(chosen);
          }} />
        </label>
      </div>
      <div aria-live="polite">
        ${refusal === '' ? nothing : html`<p>${refusal}</p>`}
        ${
          file
            ? html`${file.form ? html`<p>“${this.name}” is ${FORMS[file.form]}.</p>` : nothing}
              ${file.guess ? this.#guess(file.guess) : nothing}
              <wk-problems .problems=${file.rain ? [] : file.problems}></wk-problems>
              ${file.notes.length === 0 ? nothing : html`<ul>${file.notes.map((note) => html`<li>${note.what}${note.found ? `: ${note.found}` : ''}</li>`)}</ul>`}
              ${file.mendable ? this.#mend() : nothing}
              ${file.rain ? this.#rain(file.rain) : nothing}
              ${file.series ? this.#series(file.series) : nothing}`
            : nothing
        }
      </div>`;
  }
}

/** Days that were filled are handed on empty, so that whoever reads the text fills and tells of them again. */
function withGaps(text: string, { filled }: WeatherSeries): string {
  const cells = { rainMm: 1, minC: 2, maxC: 3 } as const;
  return text
    .split('\n')
    .map((line) => {
      const row = line.split(',');
      for (const { key, from, to } of filled)
        if (key !== 'meanC' && row[0] >= from && row[0] <= to) row[cells[key]] = '';
      return row.join(',');
    })
    .join('\n');
}

customElements.define('wk-weather', WkWeather);
