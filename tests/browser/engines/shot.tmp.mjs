import { startWebKit } from "./wk.tmp.mjs"; import { serve } from "../harness.mjs"; import { ready } from "./page.mjs"; import fs from "fs"; import { setTimeout as pause } from "node:timers/promises";
const site = await serve(); const b = await startWebKit(); const tab = await b.tab();
const wait = async (f) => { for (let i=0;i<200;i++) { try { if (await tab.eval(f)) return; } catch {} await pause(100);} throw new Error('never '+f); };
try {
await tab.open(site.url); await wait(ready);
console.log(await tab.eval(() => [typeof navigator.storage, isSecureContext, navigator.userAgent, innerWidth, CSS.supports("accent-color","red")]));
await wait(() => document.querySelector('[aria-label^="Open a copy of: "]') !== null);
await tab.click('[aria-label^="Open a copy of: "]'); await wait(() => location.hash.length>2);
for (const theme of ["light","dark"]) for (const [w,h] of [[1100,1000],[600,1000],[420,900]]) for (const r of ["piece","condition","money"]) {
  await tab.size(w,h); await tab.eval((t,r)=>{document.documentElement.dataset.theme=t; location.hash="#/"+r},theme,r); await pause(2500);
  const over = await tab.eval(() => { const W=document.documentElement.clientWidth; return [innerWidth, W, document.documentElement.scrollWidth, [...document.querySelectorAll("main *")].filter(e=>{const x=e.getBoundingClientRect(); return x.right>W+1 && x.width>0 && !e.closest('.table-scroll')}).slice(0,5).map(e=>e.tagName+'.'+e.className+' '+Math.round(e.getBoundingClientRect().right))]; });
  console.log(theme,w,r,JSON.stringify(over));
  await tab.eval(()=>{ const e=document.querySelector('main select')||document.querySelector('main input'); e?.scrollIntoView({block:'center'}); }); await pause(300);
  fs.writeFileSync(`/tmp/eng/wk/${theme}-${w}-${r}.png`, Buffer.from(await tab.shot(),'base64'));
}
} catch(e){console.log(e)} await b.close(); await site.close(); process.exit(0);
