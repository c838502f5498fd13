import { notebook } from './kestrel.ts';
const book = notebook(`# Kestrel Court

## Landing
- Slab length: 10.8 ft
  - from: measured on site, 2026-03-03
- Slab width: 4 ft
- Thickness: 4 in
  - from: code minimum
- Waste: 10%
  - from: rule of thumb
- Bag yield: 0.45 cubic feet per bag
  - from: bag label, 60 lb mix
- Bag price: $6.48 per bag
  - from: quoted, invented
- Slab volume: slab length by slab width by thickness
- Bags to buy: slab volume plus waste, in bags of bag yield
- Concrete: bags to buy at bag price
  - cost: material
- Mix and place: bags to buy at 8 min per bag, at $50 per hour
  - cost: labour
- Gravel: slab length by slab width by thickness, in cubic yards, at $137.77 per cubic yard
  - cost: material
- Delivery: slab length at $1.23 per ft
  - cost: equipment
  - by hand: $15
  - from: agreed on the phone
- Turf: ?
  - cost: subcontract
- Path: path area at $4 per sq ft
  - cost: subcontract
- Path area: ? sq ft
- Broken: slab length plus bag price
  - cost: fee
- Uses broken: broken plus $5
- Materials: total of material in Landing
- Everything: total cost of Landing
- Price: everything for 15% overhead and 10% profit
- Riser check: thickness is at most 7 3/4 in
  - caution: Too steep for a residential stair in most places; ask the local building department.
  - from: International Residential Code 2021, R311.7.5.1
- Odd: slab volume plus slab volume times 2, in cubic yards
- Circle one: circle two plus 1 ft
- Circle two: circle one plus 1 ft
- Half: (slab length plus 40 ft) ÷ (slab width - 4 ft)
- Hours: 8:30 hours
- Wage: hours at $31.15 per hour plus 7.65%
- Long: slab length plus slab width plus thickness plus 1 ft plus 2 ft plus 3 ft plus 4 ft plus 5 ft plus 6 ft plus 7 ft plus 8 ft plus 9 ft plus 10 ft plus 11 ft plus 12 ft plus 13 ft
`);
for (const n of process.argv.slice(2).length ? process.argv.slice(2) : ['Slab length','Concrete','Mix and place','Gravel','Delivery','Turf','Path','Broken','Uses broken','Materials','Everything','Price','Riser check','Odd','Circle one','Half','Wage','Long']) {
 try { console.log(book.text(n)); } catch (e) { console.log(n, (e as Error).stack?.split('\n').slice(0,8).join('\n')); }
 console.log('-----');
}
