"""Makes ../equilibriumCantera.json: equilibria by Cantera, an independent program, from the same NASA TM-4513 polynomials.

Graphite is a phase of its own. The mixtures go from soot to lean and leave out elements one by one; they are invented.

Run: pip install cantera==3.2.0; python equilibrium_cantera.py
"""
import json
import pathlib
import cantera as ct

GASES = ['N2', 'O2', 'Ar', 'CO2', 'CO', 'H2O', 'H2', 'CH4', 'OH', 'H', 'O', 'NO']
SPECIES = {s.name: s for s in ct.Species.list_from_file('nasa_gas.yaml')}
for species in SPECIES.values():
    # The polynomials are for 1 bar, as their entropies show (nitrogen at 298.15 K: 191.61 J/(mol K)); the file leaves
    # the pressure out, which Cantera takes for 1 atm.
    if isinstance(species.thermo, ct.NasaPoly2):
        old = species.thermo
        species.thermo = ct.NasaPoly2(old.min_temp, old.max_temp, 1e5, old.coeffs)
gas = ct.Solution(thermo='ideal-gas', species=[SPECIES[name] for name in GASES])
graphite = ct.Solution('graphite.yaml')

FEEDS = {
    'wood gas with air': {'CO': 18, 'H2': 10, 'CH4': 3, 'CO2': 12, 'N2': 100, 'O2': 12, 'Ar': 1},
    'rich wood gas': {'CO': 18, 'H2': 10, 'CH4': 3, 'CO2': 12, 'N2': 57},
    'wood, wet': {'C(gr)': 42, 'H2': 45, 'H2O': 10, 'O2': 13, 'N2': 40, 'Ar': 0.5},
    'char and a little air': {'C(gr)': 100, 'O2': 21, 'N2': 79},
    'char and air': {'C(gr)': 21, 'O2': 21, 'N2': 79},
    'methane': {'CH4': 1},
    'methane and steam': {'CH4': 1, 'H2O': 1},
    'hydrogen, lean': {'H2': 1, 'O2': 3, 'N2': 12},
    'steam': {'H2O': 1},
    'air': {'N2': 78, 'O2': 21, 'Ar': 1},
    'carbon monoxide': {'CO': 1},
    'carbon dioxide and hydrogen': {'CO2': 1, 'H2': 1},
    'stoichiometric methane': {'CH4': 1, 'O2': 2, 'N2': 7.52},
}
rows = []
for label, feed in FEEDS.items():
    for temperature in (300.0, 500.0, 800.0, 1100.0, 1600.0, 2200.0, 3000.0, 3500.0):
        for pressure in (101325.0,) if temperature != 1100.0 else (20000.0, 101325.0, 1000000.0):
            moles = {name: n for name, n in feed.items() if name in GASES}
            carbon = feed.get('C(gr)', 0.0)
            gas.TPX = temperature, pressure, moles or 'N2:1'
            graphite.TP = temperature, pressure
            mix = ct.Mixture([(gas, sum(moles.values())), (graphite, carbon)])
            mix.T, mix.P = temperature, pressure
            atoms = {e.capitalize(): mix.element_moles(e) for e in ('C', 'H', 'O', 'N', 'Ar')}
            try:
                mix.equilibrate('TP', solver='vcs', rtol=1e-11, max_steps=20000)
                # A gas that is all but gone leaves Cantera's phase at no moles at all.
                finite = mix.phase_moles(0) > 1e-12
            except ct.CanteraError:
                finite = False
            if not finite:
                continue
            total = mix.phase_moles(0)
            rows.append({
                'feed': label, 'temperature': temperature, 'pressure': pressure,
                'atoms': {e: n for e, n in atoms.items() if n > 0},
                'gasMoles': total, 'graphite': mix.phase_moles(1),
                'fractions': {name: float(x) for name, x in zip(GASES, gas.X) if x > 1e-12},
                'enthalpy': float((gas.enthalpy_mole * total + graphite.enthalpy_mole * mix.phase_moles(1)) / 1000),
            })
text = json.dumps({
    'source': f'Cantera {ct.__version__}, multiphase solver (VCS), by test/reference/generators/equilibrium_cantera.py; '
              'NASA TM-4513 polynomials of its nasa_gas.yaml, graphite of its graphite.yaml; mixtures invented here',
    'rows': rows,
}, indent=1)
# To the file itself: the solver prints to the standard output when it gives up.
(pathlib.Path(__file__).parent.parent / 'equilibriumCantera.json').write_text(text + '\n')
