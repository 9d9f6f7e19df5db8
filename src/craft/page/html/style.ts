/** The look of a published plan on a screen: ink on warm paper, one ember accent, as wide as reads well. */
export const PLAN_STYLE = `
:root{color-scheme:light;--paper:#faf6ee;--ink:#241f1a;--muted:#5d554c;--rule:#cfc4b3;--ember:#a83a12;--wash:#f1e9db}
*{box-sizing:border-box}
html{scroll-behavior:smooth}
@media(prefers-reduced-motion:reduce){html{scroll-behavior:auto}}
body{margin:0;background:var(--paper);color:var(--ink);font:17px/1.5 'Source Sans 3','Source Sans 3 More','Segoe UI','Helvetica Neue',Arial,'Noto Sans','DejaVu Sans',sans-serif;font-variant-numeric:tabular-nums}
header,main,footer{max-width:66rem;margin:0 auto;padding:0 1.25rem}
header{padding-top:2.2rem}
h1{font-size:2.3rem;line-height:1.15;margin:0 0 .3rem}
h2{font-size:1.45rem;line-height:1.25;margin:2.6rem 0 .6rem;padding-top:.9rem;border-top:2px solid var(--ink)}
h3{font-size:1.08rem;line-height:1.3;margin:1.5rem 0 .4rem}
p{margin:.5rem 0;max-width:46rem}
.muted,figcaption,small,dt{color:var(--muted)}
small{display:block;font-size:.86rem}
a{color:var(--ember)}
a:focus-visible,button:focus-visible,label:focus-within,canvas:focus-visible,.wide:focus-visible{outline:3px solid var(--ember);outline-offset:2px}
nav ul{list-style:none;display:flex;flex-wrap:wrap;gap:.3rem 1.2rem;padding:0;margin:1rem 0}
.units{border:0;padding:0;margin:1rem 0;display:flex;flex-wrap:wrap;gap:.4rem 1.1rem;align-items:center}
.units legend{float:left;margin-right:.4rem;padding:0;color:var(--muted)}
.units label{display:inline-flex;align-items:center;gap:.35rem;min-height:2rem;cursor:pointer}
ul,ol{margin:.5rem 0;padding-left:1.4rem;max-width:46rem}
li{margin:.22rem 0}
.wide{overflow-x:auto;margin:.9rem 0}
table{border-collapse:collapse;width:100%;min-width:36rem;font-size:.94rem}
th,td{text-align:left;vertical-align:top;padding:.38rem .9rem .38rem 0;border-bottom:1px solid var(--rule)}
th{color:var(--muted);font-weight:600;border-bottom:2px solid var(--ink)}
.right{text-align:right;padding-right:0;padding-left:.9rem}
.right+:not(.right){padding-left:.9rem}
.facts{display:grid;grid-template-columns:repeat(auto-fill,minmax(10.5rem,1fr));gap:1.1rem 1.4rem;margin:1.1rem 0}
.facts div,.facts dt,.facts dd,.fields dt,.fields dd{margin:0}
.facts b{display:block;font-size:1.3rem;line-height:1.25}
.fields{display:grid;grid-template-columns:repeat(auto-fill,minmax(19rem,1fr));gap:0 2rem;margin:.8rem 0}
.fields div{display:flex;justify-content:space-between;gap:1rem;border-bottom:1px solid var(--muted);padding:.85rem 0 .15rem;font-size:.94rem}
.fields dt{color:var(--ink)}
.fields dd{color:var(--muted)}
figure{margin:1.2rem 0}
figure svg{display:block;width:100%;height:auto}
.narrow{display:none}
@media(max-width:40rem){.desk:has(+.narrow){display:none}.narrow{display:block}}
figcaption{font-size:.9rem;margin-top:.4rem}
.beside{display:grid;grid-template-columns:minmax(0,1fr);gap:.2rem 2rem;align-items:start}
@media(min-width:52rem){.beside{grid-template-columns:minmax(0,var(--left)) minmax(0,var(--right))}}
.cautions{background:var(--wash);border-left:5px solid var(--ember);padding:.8rem 1.1rem;margin:1.4rem 0}
.cautions p{margin:0 0 .3rem}
.cautions ul{margin:0}
.both i{font-style:normal}
.mm,.in{white-space:nowrap}
[data-units=mm] .in{display:none}
[data-units=in] .mm,[data-units=in] .in i{display:none}
canvas{display:block;width:100%;height:min(70vh,34rem);touch-action:pan-y;cursor:grab;background:var(--paper)}
canvas:active{cursor:grabbing}
.turn{display:flex;flex-wrap:wrap;gap:.5rem;margin:.4rem 0}
button{font:inherit;color:inherit;background:none;border:1px solid var(--muted);padding:.35rem .9rem;min-height:2.2rem;cursor:pointer}
button[aria-pressed=true]{background:var(--ink);color:var(--paper);border-color:var(--ink)}
footer{border-top:1px solid var(--rule);margin-top:3rem;padding-top:1rem;padding-bottom:2.5rem;color:var(--muted);font-size:.92rem}
@media print{nav,.units,.turn,canvas{display:none}body{background:#fff;font-size:11pt}h2{break-after:avoid}figure,.together,.cautions,tr{break-inside:avoid}}
`
