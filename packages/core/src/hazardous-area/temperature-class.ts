import type { TemperatureClass } from '../demand/hazardous-area.ts';
import { iec60079x11 } from '../source/iec-60079-11.ts';
import { type Clause, clause } from '../source/source.ts';
import { temperatureClassTable } from '../source/temperature-class-table.ts';

const kelvin = 273.15;

/** Highest surface temperature of each class in °C: a trade table and a manual, second-hand; T4A from memory. */
const highest: Readonly<Record<TemperatureClass, number>> = {
  T1: 450,
  T2: 300,
  T2A: 280,
  T2B: 260,
  T2C: 230,
  T2D: 215,
  T3: 200,
  T3A: 180,
  T3B: 165,
  T3C: 160,
  T4: 135,
  T4A: 120,
  T5: 100,
  T6: 85,
};

/** Highest surface temperature of a class, in kelvin. */
export function highestSurfaceOf(temperatureClass: TemperatureClass): number {
  return highest[temperatureClass] + kelvin;
}

/** A class covers another that allows a hotter surface: T4 covers T3. It says nothing of the ambient. */
export function coversClass(offered: TemperatureClass, required: TemperatureClass): boolean {
  return highest[offered] <= highest[required];
}

/**
 * Power up to which a small part counts as T4, by ambient in kelvin: 1.3 W at 40 °C, 1.2 W at 60 °C, 1.0 W at 80 °C,
 * straight lines between; above 80 °C the rule says nothing. Holds for a surface of 20 mm² or more. Source: IEC
 * 60079-11 (from memory).
 */
export function powerForT4(ambient: number): number | undefined {
  const steps = [
    [40, 1.3],
    [60, 1.2],
    [80, 1.0],
  ] as const;
  const celsius = ambient - kelvin;
  if (celsius > 80 + 1e-9) return undefined;
  const above = steps.findIndex(([temperature]) => celsius <= temperature + 1e-9);
  if (above === 0) return steps[0][1];
  const [[low, most], [high, least]] = [steps[above - 1]!, steps[above]!];
  return most + ((celsius - low) / (high - low)) * (least - most);
}

/** Ambient that a certificate speaks for where it names no other, in kelvin. Source: IEC 60079-0 (from memory). */
export const usualAmbient = { low: -20 + kelvin, high: 40 + kelvin } as const;

export const temperatureClassSources: readonly Clause[] = [
  clause(temperatureClassTable),
  clause(iec60079x11, 'T4 by power'),
];
