/** A trial of the burn that `examples/heron.logger.csv` tells of: invented like it. The phone's clock is kept apart from the logger's. */
export const loggerTrial = {
  format: 'tinwright/trial@1',
  name: 'Heron, first burn',
  day: '2031-05-17',
  stove: { name: 'Heron' },
  fuel: { kind: 'wood-chips', moisture: { meter: '10 %' } },
  weather: { temperature: '14 °C', boilingPoint: '98.4 °C' },
  pot: { weight: '180 g', lid: true },
  start: 'cold',
  instruments: {
    scale: { resolution: '1 g' },
    thermometer: { resolution: '0.1 K' },
    clock: { resolution: '1 s' },
    moistureMeter: { accuracy: '2 %' },
  },
  phases: [
    {
      phase: 'high power',
      from: { at: '1 min', fuel: '180 g', pot: '1180 g', water: '14 °C' },
      to: { at: '15 min', fuel: '60 g', pot: '1160 g', water: '98 °C' },
    },
  ],
  events: [
    { id: 'a-0001', at: '2031-05-17T07:14:10Z', event: 'lit' },
    { id: 'a-0002', at: '2031-05-17T07:25:40Z', event: 'boil' },
    { id: 'a-0003', at: '2031-05-17T07:30:10Z', event: 'flame out' },
    { id: 'a-0004', at: '2031-05-17T07:16:00Z', event: 'note', text: 'flame whirls' },
    { id: 'a-0005', at: '2031-05-17T07:18:00Z', event: 'note', text: 'a little smoke' },
  ],
}
