import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { STANDARD_ATMOSPHERE } from '#basis/constants.ts'
import { medianPotCoefficients } from '#science/pot/coefficients.ts'
import { evaporationRate } from '#science/pot/evaporation.ts'
import type { Pot } from '#science/pot/pot.ts'
import { potTop } from '#science/pot/potTop.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'
import { evaporationHeat } from '#science/pot/water.ts'
import type { MoistAir } from '#science/weather/moistAir.ts'

const room: MoistAir = { temperature: 288.71, pressure: STANDARD_ATMOSPHERE, humidity: 0.5 }

describe('evaporation', () => {
  const temperature = fc.double({ min: 275, max: 373, noNaN: true })

  test('rises with the water’s temperature, falls with the air’s humidity', () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 0, max: 0.9, noNaN: true }), (water, humidity) => {
        const air = { ...room, humidity }
        expect(evaporationRate(water + 0.1, air)).toBeGreaterThanOrEqual(evaporationRate(water, air))
        expect(evaporationRate(water, { ...air, humidity: humidity + 0.1 })).toBeLessThanOrEqual(
          evaporationRate(water, air),
        )
      }),
    )
  })

  test('none from water of the air’s own temperature when the air is saturated, none into colder water', () => {
    expect(evaporationRate(room.temperature, { ...room, humidity: 1 })).toBeLessThan(1e-12)
    expect(evaporationRate(275, { ...room, humidity: 1 })).toBe(0)
  })

  test('stays finite and smooth up to the boiling point, where the air is pushed aside', () => {
    const boiling = saturationTemperature(room.pressure)
    const flux = evaporationRate(boiling, room) * evaporationHeat(boiling)
    expect(flux).toBeGreaterThan(8000)
    expect(flux).toBeLessThan(14000)
    expect(evaporationRate(boiling, room) / evaporationRate(boiling - 0.01, room) - 1).toBeLessThan(1e-3)
  })

  test('at the same share of the boiling pressure a mountain takes more vapour per drive, never less water hot', () => {
    const high = { ...room, pressure: 70000 }
    expect(evaporationRate(350, high)).toBeGreaterThan(evaporationRate(350, room))
  })
})

describe('lid', () => {
  const pot: Pot = { diameter: 0.16, height: 0.12, lid: true, wall: 0.001, metal: 'aluminium' }

  test('spares most of the loss, and less of it the colder the water', () => {
    const total = (lid: boolean, water: number): number => {
      const top = potTop({ ...pot, lid }, water, room, 0, medianPotCoefficients)
      return top.convection + top.radiation + top.evaporation
    }
    expect(total(true, 365) / total(false, 365)).toBeLessThan(0.35)
    expect(total(true, 300) / total(false, 300)).toBeLessThan(1)
  })

  test('wind cools, water at the air’s temperature loses nothing by convection and radiation', () => {
    const still = potTop(pot, 350, room, 0, medianPotCoefficients)
    const windy = potTop(pot, 350, room, 3, medianPotCoefficients)
    expect(windy.convection).toBeGreaterThan(still.convection)
    expect(windy.radiation).toBe(still.radiation)
    const cold = potTop(pot, room.temperature, room, 3, medianPotCoefficients)
    expect(Math.abs(cold.convection) + Math.abs(cold.radiation)).toBeLessThan(1e-9)
  })
})
