"""Makes ../pureTransport.json: viscosity and conductivity of single gases and of air at low density by CoolProp, an
independent program that holds the reference correlations of the literature.

Sources inside it: N2, O2, Ar, air: Lemmon & Jacobsen 2004; CO2: Laesecke & Muzny 2017 and Huber et al. 2016; water:
IAPWS 2008 and 2011; H2: Muzny et al. 2013 and Assael et al. 2011; CH4: Quinones-Cisneros et al. and Friend et al. It
has no model for carbon monoxide. Rows end where CoolProp says that the fluid's own range ends.

Run: pip install coolprop==8.0.0; python transport_coolprop.py > ../pureTransport.json
"""
import json
import CoolProp
from CoolProp.CoolProp import PropsSI

FLUIDS = {'N2': 'Nitrogen', 'O2': 'Oxygen', 'Ar': 'Argon', 'CO2': 'CarbonDioxide', 'H2O': 'Water', 'H2': 'Hydrogen',
          'CH4': 'Methane', 'air': 'Air'}
TEMPERATURES = (250, 300, 400, 500, 600, 800, 1000, 1200, 1500, 1800, 2000)
NEXT_TO_NOTHING = 1e-6  # kg/m3
rows = [
    [name, t, PropsSI('V', 'T', t, 'D', NEXT_TO_NOTHING, fluid), PropsSI('L', 'T', t, 'D', NEXT_TO_NOTHING, fluid)]
    for name, fluid in FLUIDS.items()
    for t in TEMPERATURES
    if t <= PropsSI('Tmax', fluid) and not (name == 'H2O' and t < 273.16)
]
print(json.dumps({
    'source': f'CoolProp {CoolProp.__version__} at {NEXT_TO_NOTHING} kg/m3, by test/reference/generators/transport_coolprop.py',
    'columns': ['gas', 'temperature [K]', 'viscosity [Pa s]', 'conductivity [W/(m K)]'],
    'rows': rows,
}, indent=None).replace('], [', '],\n  ['))
