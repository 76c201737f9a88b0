import { test } from 'vitest';
import { adviseSetting } from '/work/wt/advice/src/core/setting-advice.ts';
import { makeProjectorShutter } from '/work/wt/advice/src/core/shutter.ts';
test('x', () => {
  for (const [f,n,c,T,R,p] of [[24,3,25,1/50,0],[24,2,25,1/50,0],[24,2,25,1/50,.008],[24,2,25,1/50,undefined],[18,3,25,1/50,undefined],[18,3,25,1/50,0],[18,3,25,1/50,.016],[24,3,25,1/50,undefined],[18,1,25,1/50,0],[30,2,25,1/50,.01],[18,3,25,1/50,0,90],[18,3,25,1/50,0,66],[18,3,25,1/50,undefined,66],[12,2,25,1/50,undefined]] as any) {
    const t=performance.now();
    const a = adviseSetting({filmFps:f,cameraFps:c,exposureSeconds:T},{shutter:makeProjectorShutter(n,.5,p),readoutSeconds:R,rippleLimitPercent:1});
    console.log(f,n,c,R,p, a.kind, (a as any).change, (a as any).setting && [(a as any).setting.filmFps,(a as any).setting.cameraFps,1/(a as any).setting.exposureSeconds], (a as any).readoutSeconds, (performance.now()-t).toFixed(1));
  }
});
