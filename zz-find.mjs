const r = await fetch("http://127.0.0.1:4299/api/notebooks"); const {notebooks} = await r.json(); const id = (notebooks??[])[0].id ?? (notebooks)[0];
let cursor="", all=[]; for(;;){ const e = await (await fetch(`http://127.0.0.1:4299/api/notebooks/${id}/entries?limit=1000${cursor?`&after=${cursor}`:""}`)).json(); all.push(...e.entries); if(e.entries.length===0||e.cursor===cursor) break; cursor=e.cursor; }
const L = all.filter(e=>e.kind==="layer-applied"); console.log(all.length, L.length); for (const l of L.slice(0,3).concat(L.slice(-3))) console.log(l.id, JSON.stringify(l.body).slice(0,300));
console.log(all.filter(e=>e.kind==="trial-asked").map(e=>e.id), all.filter(e=>e.kind==="piece-described").map(e=>e.id));
