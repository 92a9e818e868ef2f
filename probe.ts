import { runRows, smoothYear, weatherOf } from './tests/model/fieldRig.ts';
import { planOf } from './src/model/engine/plan.ts';
const parts=['winter','soilWater','paddock'];
const year=(start:string,mean:number,swing:number,rain:number,warmest='07-15',lat=53)=>{
  const t0=Date.parse(start), w=Date.parse(start.slice(0,4)+'-'+warmest);
  const rainA:number[]=[],m:number[]=[];
  for(let d=0;d<365;d++){const x=(t0-w)/86400000+d; m.push(mean+swing*Math.cos(2*Math.PI*x/365)); rainA.push(d%2===0?rain*2:0);}
  return weatherOf(rainA,m,8,lat,start);
};
const show=(label:string,weather:any,turn:any={},picks:any={})=>{
  const {rows}=runRows(parts,[weather],[{paddockDryMatterInKg:0,paddockNitrogenUsedKg:0,winterDays:7,livestockUnits:20,paddockTanInKg:100,paddockNitrogenInKg:100,paddockHa:2,latitudeDeg:53,...turn}],picks,false);
  const r:any=rows[0]; const N=turn.paddockNitrogenInKg??100;
  const p=(k:string)=>(100*r[k]/N).toFixed(1);
  console.log(label.padEnd(34),'NH3',p('paddockAmmoniaKg'),'run',p('paddockRunoffKg'),'N2',p('paddockDinitrogenKg'),'byp',p('paddockBypassKg'),'leach',p('paddockLeachedKg'),'(2nd',p('paddockLaterLeachedKg')+')','herb',p('paddockNitrogenInCropKg'),'bound',p('paddockNitrogenBoundKg'),'risk',p('paddockNitrogenAtRiskKg'),'load',((r.urinePatchHa>0?N*.83/r.urinePatchHa:0)).toFixed(0), 'drain',r.drainageMm.toFixed(0),'gd',r.growthDay,'ge',r.growthEndDay.toFixed(0),'wet',r.wetDays,'froz',r.frozenDays);
};
// Normandy, load 520 kg/ha patch: 20 LU*7d*m2 -> N
const ha=20*7*3/1e4; 
for (const tex of ['siltLoam','loam','sand']) for (const m of ['04-15','06-15','07-15','08-15','10-01','11-01','12-15']) {
  const w=year('2010-'+m,11,7,2.1,'07-15',49);
  show('Normandy '+tex+' '+m,w,{paddockTanInKg:520*ha,paddockNitrogenInKg:520*ha,latitudeDeg:49},{texture:tex,moved:'daily'});
}
show('S sand Oct 1030',year('2010-10-10',9.5,8,2.2,'07-15',51.5),{paddockTanInKg:1030*ha,paddockNitrogenInKg:1030*ha,latitudeDeg:51.5},{texture:'sand',moved:'daily'});
for (const m of ['06-15','08-15']) show('Boreal B 374 '+m,year('2010-'+m,4,14,1.8,'07-15',63),{paddockTanInKg:374*ha,paddockNitrogenInKg:374*ha,latitudeDeg:63},{texture:'sandyLoam',moved:'daily'});
show('Woods NZ autumn 700 ',year('2010-11-01',11.5,6,2.6,'07-15',43.6),{paddockTanInKg:700*ha,paddockNitrogenInKg:700*ha,latitudeDeg:43.6},{texture:'siltLoam',moved:'daily'});
show('Di NZ autumn 1000',year('2010-11-01',11.5,6,1.9,'07-15',43.6),{paddockTanInKg:1000*ha,paddockNitrogenInKg:1000*ha,latitudeDeg:43.6},{texture:'siltLoam',moved:'daily'});
show('Dung Oct sand',year('2010-10-10',9.5,8,2.2,'07-15',51.5),{paddockTanInKg:0,paddockNitrogenInKg:1052*ha,latitudeDeg:51.5},{texture:'sand',moved:'daily'});
