/** Waveforms on a canvas. Loaded when a record is opened, not before. */
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { Wave } from '../core/core';
import { quantity } from '../words/quantity';

export interface PlotEvents {
  /** A stretch of time was chosen [s]. */
  readonly onstretch: (from: number, to: number) => void;
  /** A moment was chosen [s]. */
  readonly onmoment: (seconds: number) => void;
}

export interface Lines {
  /** Where the phasors are worked out; undefined where nowhere yet. */
  readonly moment: number | undefined;
  readonly trigger: number | undefined;
}

/** Told apart without colour: line after line in another pattern. */
const DASHES: readonly (number[] | undefined)[] = [undefined, [10, 5], [2, 4], [14, 4, 2, 4]];

function colour(name: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

function lines(): readonly string[] {
  return ['--ink', '--accent', '--danger', '--good', '--warn'].map(colour);
}

/** One panel of channels of one unit. */
export class Plot {
  readonly #plot: uPlot;
  #lines: Lines;

  constructor(place: HTMLElement, waves: readonly Wave[], unit: string, span: readonly [number, number], at: Lines, events: PlotEvents) {
    this.#lines = at;
    const colours = lines();
    const axis = { stroke: colour('--ink'), grid: { stroke: colour('--rule-soft'), width: 1 }, ticks: { stroke: colour('--rule') } };
    this.#plot = new uPlot(
      {
        width: Math.max(200, place.clientWidth),
        height: 260,
        cursor: { drag: { x: true, y: false, setScale: false } },
        legend: { show: false },
        scales: { x: { time: false, range: () => [span[0], span[1]] } },
        series: [
          {},
          ...waves.map((wave, i) => {
            const dash = DASHES[i % DASHES.length];
            return { label: wave.name, stroke: colours[i % colours.length] ?? '#000', width: 1.5, ...(dash === undefined ? {} : { dash }) };
          }),
        ],
        axes: [
          { ...axis, values: (_: uPlot, splits: number[]) => splits.map((s) => `${Number((s * 1000).toFixed(2))} ms`) },
          { ...axis, size: 70, values: (_: uPlot, splits: number[]) => splits.map((v) => quantity(v, unit)) },
        ],
        hooks: {
          setSelect: [
            (plot) => {
              const { left, width } = plot.select;
              if (width > 8) {
                events.onstretch(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'));
              }
              plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
            },
          ],
          draw: [(plot) => this.#mark(plot)],
          ready: [
            (plot) =>
              plot.over.addEventListener('click', () => {
                const left = plot.cursor.left ?? -1;
                if (left >= 0) {
                  events.onmoment(plot.posToVal(left, 'x'));
                }
              }),
          ],
        },
      },
      joined(waves),
      place,
    );
  }

  /** Shows another moment. */
  lines(at: Lines): void {
    this.#lines = at;
    this.#plot.redraw(false);
  }

  width(width: number): void {
    this.#plot.setSize({ width: Math.max(200, width), height: 260 });
  }

  end(): void {
    this.#plot.destroy();
  }

  #mark(plot: uPlot): void {
    const pen = plot.ctx;
    const { left, top, width, height } = plot.bbox;
    const line = (seconds: number | undefined, stroke: string, dash: number[]) => {
      const x = seconds === undefined ? -1 : plot.valToPos(seconds, 'x', true);
      if (x >= left && x <= left + width) {
        pen.save();
        pen.strokeStyle = stroke;
        pen.lineWidth = 2 * devicePixelRatio;
        pen.setLineDash(dash.map((d) => d * devicePixelRatio));
        pen.beginPath();
        pen.moveTo(x, top);
        pen.lineTo(x, top + height);
        pen.stroke();
        pen.restore();
      }
    };
    line(this.#lines.trigger, colour('--rule'), [4, 4]);
    line(this.#lines.moment, colour('--accent'), []);
  }
}

/** Channels are thinned each at its own moments: put together, a moment that another channel has is no gap. */
function joined(waves: readonly Wave[]): uPlot.AlignedData {
  return waves.length === 0 ? [[]] : uPlot.join(waves.map((wave) => [[...wave.seconds], [...wave.values]] as uPlot.AlignedData));
}
