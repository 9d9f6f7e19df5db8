import { describe, expect, it } from 'vitest'
import { trialsJson } from '#proof/trial/exchange/bundle.ts'
import { trialsCsv } from '#proof/trial/exchange/records.ts'
import { readTrial } from '#proof/trial/read.ts'
import type { TrialFile } from '#proof/trial/schema.ts'
import type { DocumentHead, Workshop } from '#store/workshop.ts'
import type { NamedText } from '#wire/files.ts'
import { AT, act, fresh, refusal, value } from '../acts.ts'
import { example } from './examples.ts'
import type { Rig } from './rig.ts'

const burn = example('series/burn-01.trial.json')
const stoveD = example('series/heron-d.stove.json')
const stoveA = example('series/heron-a.stove.json')

const words = (): TrialFile => JSON.parse(burn.text) as TrialFile
const fileOf = (name: string, said: object): NamedText => ({ name, text: JSON.stringify(said) })

/** A burn like it, with other words about its stove. */
const told = (stove: Record<string, string>): NamedText => {
  const own = fresh('burn')
  const mine = <T extends { readonly id: string }>(entries: readonly T[] | undefined) =>
    entries?.map((entry) => ({ ...entry, id: `${own}-${entry.id}` }))
  const { events, masses, ...rest } = words()
  return fileOf('mine.trial.json', { ...rest, stove, events: mine(events), masses: mine(masses) })
}

const only = async (heads: readonly DocumentHead[]): Promise<DocumentHead> => {
  expect(heads).toHaveLength(1)
  return heads[0] as DocumentHead
}

const bring = async (shop: Workshop, file: NamedText): Promise<DocumentHead> =>
  only((await value(shop.importFile(act(), file))).added)

export const trialFilesSuite = ({ workshop }: Rig): void => {
  describe('trial files', () => {
    it('come in once beside the stove that was burned, and go out as they came', async () => {
      const shop = await workshop()
      await bring(shop, stoveA)
      const stove = await bring(shop, stoveD)
      const step = act()
      const report = await value(shop.importFile(step, burn))
      expect(report.added).toMatchObject([
        { kind: 'trial', name: 'Heron, burn 1', aboutDocument: stove.id, aboutRevision: stove.head },
      ])
      expect(report.remarks).toEqual([])
      const trial = await only(report.added)
      expect((await value(shop.exportFile(trial.id))).text).toBe(burn.text)
      const again = { added: [], renewed: [], known: [trial], remarks: [] }
      expect(await value(shop.importFile(act(), burn))).toEqual(again)
      expect(await value(shop.importFile(step, burn))).toEqual(again)
      // Laid out otherwise it is the same burn.
      const spread = { name: 'other.trial.json', text: JSON.stringify(JSON.parse(burn.text), null, 8) }
      expect(await value(shop.importFile(act(), spread))).toEqual(again)
      await value(shop.undo(act()))
      expect(await value(shop.list({ kinds: ['trial'] }))).toEqual([])
    })

    it('go out with what phones logged since, each entry as it stands, and come back as known', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      const trial = await bring(shop, burn)
      const smoke = { id: 'phone-smoke', at: '2032-01-10T09:03:00Z', event: 'smoke' }
      const boil = { id: 'heron-01-boil', at: '2032-01-10T09:13:40Z', event: 'boil', edit: 1 }
      const events = [smoke, boil].map((entry) => ({
        id: fresh('event'),
        at: entry.at,
        body: JSON.stringify(entry),
      }))
      // Of another program: no entry of a log.
      const strange = { id: fresh('event'), at: AT, body: '{ "kind": "boil" }' }
      await value(shop.logEvents({ trial: trial.id, client: 'phone', at: AT, events: [...events, strange] }))
      const file = await value(shop.exportFile(trial.id))
      expect(file.name).toBe('heron-burn-1.trial.json')
      const whole = readTrial(file.text)
      const before = readTrial(burn.text)
      if (!whole.ok || !before.ok) throw new Error(JSON.stringify(whole))
      const lines = whole.value.events.map(({ id, event, after }) => ({ id, event, after }))
      expect(lines).toHaveLength(before.value.events.length + 1)
      expect(lines).toContainEqual({ id: 'phone-smoke', event: 'smoke', after: 180 })
      expect(lines).toContainEqual({ id: 'heron-01-boil', event: 'boil', after: 820 })
      expect({ ...whole.value, events: [] }).toEqual({ ...before.value, events: [] })
      expect(await value(shop.importFile(act(), file))).toMatchObject({
        added: [],
        known: [{ id: trial.id }],
      })

      const other = await workshop()
      await bring(other, stoveD)
      const there = await bring(other, file)
      expect((await value(other.exportFile(there.id))).text).toBe(file.text)
    })

    it('come out of a bundle or a table too, each beside its own stove, in one step', async () => {
      const stoves = ['a', 'd', 'f'].map((letter) => example(`series/heron-${letter}.stove.json`))
      const burns = ['01', '02', '03', '04', '05', '06']
        .map((place) => example(`series/burn-${place}.trial.json`))
        .filter(({ text }) => /heron-[adf]/.test(text))
      const files = burns.map(({ text }) => JSON.parse(text) as TrialFile)
      for (const [name, text] of [
        ['all.json', trialsJson(files)],
        ['all.csv', trialsCsv(files)],
      ] as const) {
        const shop = await workshop()
        for (const stove of stoves) await bring(shop, stove)
        const { added, remarks } = await value(shop.importFile(act(), { name, text }))
        expect(remarks).toEqual([])
        expect(added).toHaveLength(3)
        expect(new Set(added.map(({ aboutDocument }) => aboutDocument)).size).toBe(3)
        for (const [i, { id }] of added.entries())
          expect((await value(shop.exportFile(id))).text).toBe(burns[i]?.text)
        for (const burn of burns)
          expect(await value(shop.importFile(act(), burn))).toMatchObject({ added: [], known: [{}] })
        await value(shop.undo(act()))
        expect(await value(shop.list({ kinds: ['trial'] }))).toEqual([])
      }
    })

    it('are known when they were filled in since', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      const { id, head } = await bring(shop, burn)
      const text = burn.text.replace('"0 m/s"', '"1 m/s"')
      const wanted = { document: id, revision: fresh('revision'), base: head, text, note: 'wind' }
      await value(shop.save(act(), wanted))
      expect(await value(shop.importFile(act(), burn))).toMatchObject({ added: [], known: [{ id }] })
    })

    it('go on where a file tells a burn that is here in more words, and nothing is there twice', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      const { masses, weather, ...rest } = words()
      const { wind, ...air } = weather
      const short = fileOf('short.json', { ...rest, weather: air, events: rest.events?.slice(0, 3) })
      const trial = await bring(shop, short)
      const phone = { id: 'phone-smoke', at: '2032-01-10T09:03:00Z', event: 'smoke' }
      const event = { id: fresh('event'), at: phone.at, body: JSON.stringify(phone) }
      await value(shop.logEvents({ trial: trial.id, client: 'phone', at: AT, events: [event] }))
      const report = await value(shop.importFile(act(), { name: 'long.json', text: burn.text }))
      expect(report).toMatchObject({ added: [], renewed: [{ id: trial.id }], known: [] })
      const news = (rest.events?.length ?? 0) - 3 + (masses?.length ?? 0)
      expect(report.remarks).toEqual([
        `long.json is the burn “Heron, burn 1”, by the entries of its log: ${news} entries of its log were new and are in it now; filled in: weather.wind.`,
      ])
      const whole = JSON.parse((await value(shop.exportFile(trial.id))).text) as TrialFile
      expect(whole.weather.wind).toBe(wind)
      expect(whole.masses).toEqual(masses)
      const ids = whole.events?.map(({ id }) => id) ?? []
      expect([...ids].sort()).toEqual([...(words().events ?? []).map(({ id }) => id), phone.id].sort())
      // Neither the longer one nor the shorter one adds anything any more.
      for (const again of [{ name: 'long.json', text: burn.text }, short])
        expect(await value(shop.importFile(act(), again))).toMatchObject({
          added: [],
          renewed: [],
          known: [{ id: trial.id }],
          remarks: [],
        })
      await value(shop.undo(act()))
      const back = JSON.parse((await value(shop.exportFile(trial.id))).text) as TrialFile
      expect(back.events).toHaveLength(4)
    })

    it('leave what was told otherwise here, and say so', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      const trial = await bring(shop, burn)
      const other = words()
      const corrected = other.events?.map((entry) =>
        entry.event === 'boil' ? { ...entry, at: '2032-01-10T09:13:40Z', edit: 1 } : entry,
      )
      const file = fileOf('other.json', { ...other, name: 'Mine', events: corrected, wentWrong: ['spilled'] })
      const { renewed, remarks } = await value(shop.importFile(act(), file))
      expect(renewed).toMatchObject([{ id: trial.id, name: 'Heron, burn 1' }])
      expect(remarks).toEqual([
        expect.stringMatching(
          /one entry of its log was new .*filled in: wentWrong\.0; told otherwise .*: name /,
        ),
      ])
      const whole = readTrial((await value(shop.exportFile(trial.id))).text)
      if (!whole.ok) throw new Error(JSON.stringify(whole))
      expect(whole.value.name).toBe('Heron, burn 1')
      expect(whole.value.events.find(({ event }) => event === 'boil')?.after).toBe(820)
      expect(whole.value.wentWrong).toEqual(['spilled'])
    })

    it('come in half told, as they were saved while the burn went on', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      const { phases: _, pot: __, ...rest } = words()
      const half = fileOf('half.json', {
        ...rest,
        pot: {},
        phases: [{ phase: 'high power', from: {}, to: {} }],
      })
      const { added, remarks } = await value(shop.importFile(act(), half))
      expect(added).toMatchObject([{ name: 'Heron, burn 1' }])
      expect(remarks).toEqual([
        expect.stringMatching(/^half\.json is half told: its desk asks for the \d+ things still to say\.$/),
      ])
      // The same, told to its end, fills it in.
      const { renewed } = await value(shop.importFile(act(), burn))
      expect(renewed).toMatchObject([{ id: added[0]?.id }])
      const whole = readTrial((await value(shop.exportFile(added[0]?.id ?? ''))).text)
      expect(whole.ok).toBe(true)
      // What is wrong is no less wrong for what is missing beside it.
      const wrong = { ...half, text: half.text.replace('"6.4 °C"', '"6.4"') }
      expect((await refusal(shop.importFile(act(), wrong))).sentence).toContain('Which unit?')
    })

    it('stand apart where a file was copied for the next burn, ids and all', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      await bring(shop, burn)
      const later = burn.text.replaceAll('2032-01-10', '2032-01-20').replace('burn 1', 'burn 2')
      const report = await value(shop.importFile(act(), { name: 'next.json', text: later }))
      expect(report).toMatchObject({ added: [{ name: 'Heron, burn 2' }], renewed: [], known: [] })
    })

    it('lie with the revision whose hash they name, however the stove is called and has changed', async () => {
      const shop = await workshop()
      const { id, head, version } = await bring(shop, stoveD)
      await value(shop.rename(act(), id, version, 'Egret'))
      const later = {
        document: id,
        revision: fresh('revision'),
        base: head,
        text: `${stoveD.text} `,
        note: '',
      }
      await value(shop.save(act(), later))
      const { remarks, added } = await value(shop.importFile(act(), burn))
      expect(added).toMatchObject([{ aboutDocument: id, aboutRevision: head }])
      expect(remarks).toEqual([])
    })

    it('lie with the stove of that name where they name no hash, and say so where that may be another one', async () => {
      const shop = await workshop()
      const stove = await bring(shop, stoveD)
      const at = { aboutDocument: stove.id, aboutRevision: stove.head }
      for (const [words, remark] of [
        [{ name: 'Heron', variant: 'D, narrow windows' }, null],
        [{ name: 'Heron D, narrow windows' }, null],
        [{ name: 'Post 4', file: 'stoves/heron-d-narrow-windows.stove.json' }, null],
        [
          { name: 'Heron', variant: 'D, narrow windows', revision: '0'.repeat(64) },
          /names a revision of “Heron”, “D, narrow windows” that is not here; it lies with “Heron D/,
        ],
      ] as const) {
        const { added, remarks } = await value(shop.importFile(act(), told(words)))
        expect(added).toMatchObject([at])
        expect(remarks).toEqual(remark === null ? [] : [expect.stringMatching(remark)])
      }
      const twin = await bring(shop, { ...stoveD, text: `${stoveD.text}\n` })
      const two = await value(shop.importFile(act(), told({ name: 'Heron D, narrow windows', asBuilt: 'x' })))
      expect(two.added).toMatchObject([{ aboutDocument: twin.id }])
      expect(two.remarks).toEqual([expect.stringMatching(/^2 stoves here are called/)])
    })

    it('lie where the maker says when no stove fits, and are refused when nobody says', async () => {
      const shop = await workshop()
      const stove = await bring(shop, stoveA)
      const said = await refusal(shop.importFile(act(), burn))
      expect(said.code).toBe('unknown')
      expect(said.sentence).toMatch(
        /^burn-01\.trial\.json was burnt on “Heron”, “D, narrow windows”, heron-d\.stove\.json, and no stove here fits\. Nothing was changed\./,
      )
      expect(await value(shop.list({ kinds: ['trial'] }))).toEqual([])
      const { added, remarks } = await value(shop.importFile(act(), burn, stove.id))
      expect(added).toMatchObject([{ aboutDocument: stove.id, aboutRevision: stove.head }])
      expect(remarks).toEqual([expect.stringContaining('it lies with “Heron A, as planned”')])
      const trial = await only(added)
      expect((await refusal(shop.importFile(act(), told({ name: 'None' }), trial.id))).code).toBe('bad input')
      expect((await refusal(shop.importFile(act(), told({ name: 'None' }), 'nobody'))).code).toBe('unknown')
    })

    it('are refused with the reason, and nothing of them is kept', async () => {
      const shop = await workshop()
      await bring(shop, stoveD)
      for (const text of [
        burn.text.replace('"114 g"', '"114 mm"'),
        burn.text.replace('trial@1', 'trial@9'),
        burn.text.replace('"to": { "at": "14 min 47 s"', '"to": { "at": "1 min"'),
      ]) {
        expect(text).not.toBe(burn.text)
        const said = await refusal(shop.importFile(act(), { name: 'mine.json', text }))
        expect(said.code).toBe('bad input')
        expect(said.sentence).toMatch(/^mine\.json will not do, and nothing was changed\.\n./)
      }
      expect(await value(shop.list({ kinds: ['trial'], deleted: true }))).toEqual([])
    })

    it('do not go out where their text is no trial and a phone logged beside it', async () => {
      const shop = await workshop()
      const stove = await bring(shop, stoveD)
      const own = { id: fresh('trial'), revision: fresh('revision'), text: '{ }', note: '' }
      const about = { aboutDocument: stove.id, aboutRevision: stove.head }
      const trial = await value(shop.create(act(), { ...own, ...about, kind: 'trial', name: 'strange' }))
      expect((await value(shop.exportFile(trial.id))).text).toBe('{ }')
      const body = JSON.stringify({ id: 'phone-lit', at: AT, event: 'lit' })
      const batch = { trial: trial.id, client: 'phone', at: AT }
      await value(shop.logEvents({ ...batch, events: [{ id: fresh('event'), at: AT, body }] }))
      expect((await refusal(shop.exportFile(trial.id))).sentence).toContain('“strange”')
    })
  })
}
