'use strict';
// The predicted surfaces in space: turned by pointer, touch or keys; lamp and exaggeration by sliders.
(() => {
  const stage = document.getElementById('stage');
  const holder = document.getElementById('surfaces');
  if (!stage || !holder) return;
  const book = JSON.parse(holder.textContent);
  const canvas = stage.querySelector('canvas');
  const note = stage.querySelector('.note');
  const field = (name) => document.getElementById('turn-' + name);
  const shown = { plan: 0, times: book.times, lamp: 10, turn: book.turn_deg, tilt: 24, zoom: 1, colours: false };

  const fallBack = () => {
    const still = document.querySelector('#pictures img');
    canvas.hidden = true;
    note.hidden = false;
    document.querySelectorAll('#turn .controls').forEach((c) => { c.hidden = true; });
    note.querySelector('p').textContent =
      'This browser shows no 3D (WebGL is missing or switched off). ' + (still ? 'Here is a still picture of plan A.' : '');
    if (still) {
      const copy = document.createElement('img');
      copy.src = still.src;
      copy.alt = still.alt;
      note.appendChild(copy);
    }
  };

  const bytes = (text) => Uint8Array.from(atob(text), (c) => c.charCodeAt(0));

  // Base points, rays, slopes and colours of one thinned-out feature.
  const meshOf = (f) => {
    const raw = bytes(f.e), kinds = bytes(f.cell);
    const e = new Float32Array(new Int16Array(raw.buffer, 0, f.columns * f.rows)).map((v) => v * f.unit_mm);
    const heights = f.heights ? new Float32Array(new Int16Array(bytes(f.heights).buffer)).map((v) => v * f.height_unit_mm) : null;
    const n = f.columns * f.rows, at = (i, j) => j * f.columns + i;
    const mesh = { base: new Float32Array(3 * n), ray: new Float32Array(3 * n), flat: new Float32Array(3 * n),
      slope: new Float32Array(3 * n), e, colour: new Float32Array(3 * n), isCut: new Float32Array(n), faces: [] };
    const wrap = (i) => (i + f.columns) % f.columns;
    const point = (i, j) => f.wall ? [f.foot[2 * i], f.foot[2 * i + 1], f.z[j]]
      : [f.x[i], f.y[j], f.base_mm + (heights ? heights[at(i, j)] : 0)];
    const gap = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1], f.wall ? a[2] - b[2] : 0);
    // Slope of a field between cut neighbours along one way: [value per mm, direction].
    const along = (field, i, j, di, dj) => {
      const lo = f.wall ? [wrap(i - di), j - dj] : [i - di, j - dj], hi = f.wall ? [wrap(i + di), j + dj] : [i + di, j + dj];
      const ok = (p) => p[0] >= 0 && p[0] < f.columns && p[1] >= 0 && p[1] < f.rows && kinds[at(p[0], p[1])] === kinds[at(i, j)];
      const a = ok(lo) ? lo : [i, j], b = ok(hi) ? hi : [i, j];
      const pa = point(a[0], a[1]), pb = point(b[0], b[1]), length = gap(pa, pb);
      return length > 0 ? (field[at(b[0], b[1])] - field[at(a[0], a[1])]) / length : 0;
    };
    for (let j = 0; j < f.rows; ++j) {
      for (let i = 0; i < f.columns; ++i) {
        const k = at(i, j), p = point(i, j);
        const ray = f.wall ? [f.normal[2 * i], f.normal[2 * i + 1], 0] : [0, 0, 1];
        const side = f.wall ? [-ray[1], ray[0], 0] : [1, 0, 0], up = f.wall ? [0, 0, 1] : [0, 1, 0];
        const turnSign = f.wall && f.inside ? -1 : 1;
        const cut = kinds[k] === 1;
        const su = cut ? along(e, i, j, 1, 0) * turnSign : 0, sv = cut ? along(e, i, j, 0, 1) : 0;
        const hu = heights ? along(heights, i, j, 1, 0) : 0, hv = heights ? along(heights, i, j, 0, 1) : 0;
        const long = Math.hypot(1, hu, hv);
        for (let c = 0; c < 3; ++c) {
          mesh.base[3 * k + c] = p[c] - book.middle[c];
          mesh.ray[3 * k + c] = ray[c];
          mesh.flat[3 * k + c] = (ray[c] - hu * side[c] - hv * up[c]) / long;
          mesh.slope[3 * k + c] = su * side[c] + sv * up[c];
        }
        mesh.isCut[k] = cut ? 1 : 0;
        const t = Math.max(0, Math.min(1, 0.5 + 0.5 * e[k] * 1000 / book.range_um));
        const colour = book.colours[Math.round(t * (book.colours.length - 1))];
        for (let c = 0; c < 3; ++c) mesh.colour[3 * k + c] = (cut ? colour[c] : 200) / 255;
      }
    }
    const quad = (a, b, c, d) => {
      if (kinds[a] && kinds[b] && kinds[c] && kinds[d]) mesh.faces.push(a, b, c, a, c, d);
    };
    for (let j = 0; j + 1 < f.rows; ++j)
      for (let i = 0; i + (f.wall ? 0 : 1) < f.columns; ++i)
        quad(at(i, j), at(wrap(i + 1), j), at(wrap(i + 1), j + 1), at(i, j + 1));
    mesh.faces = new Uint16Array(mesh.faces);
    return mesh;
  };

  const VERTEX = `
    attribute vec3 base, ray, flatWay, slope, colour; attribute float e, isCut;
    uniform mat4 clip; uniform float times, farthest;
    varying vec3 normal, tint; varying float cut;
    void main() {
      float d = mix(e, clamp(times * e, -farthest, farthest), isCut);
      normal = flatWay - times * isCut * slope;
      tint = colour; cut = isCut;
      gl_Position = clip * vec4(base + d * ray, 1.0);
    }`;
  const FRAGMENT = `
    precision mediump float;
    uniform vec3 lamp, eye; uniform float coloured;
    varying vec3 normal, tint; varying float cut;
    void main() {
      vec3 n = normalize(normal);
      if (dot(n, eye) < 0.0) n = -n;
      vec3 stock = cut > 0.5 ? vec3(0.80, 0.77, 0.70) : vec3(0.64, 0.47, 0.30);
      vec3 own = mix(stock, tint, coloured);
      float light = mix(0.20 + 1.05 * max(dot(n, lamp), 0.0), 0.75 + 0.25 * max(dot(n, eye), 0.0), coloured);
      float gloss = (1.0 - coloured) * 0.25 * pow(max(dot(n, normalize(lamp + eye)), 0.0), 24.0);
      gl_FragColor = vec4(own * light + gloss, 1.0);
    }`;

  const gl = canvas.getContext('webgl', { antialias: true, preserveDrawingBuffer: true });
  if (!gl) { fallBack(); return; }

  const shader = (kind, text) => {
    const s = gl.createShader(kind);
    gl.shaderSource(s, text);
    gl.compileShader(s);
    if (!gl.getShaderParameter(s, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(s));
    return s;
  };
  const program = gl.createProgram();
  try {
    gl.attachShader(program, shader(gl.VERTEX_SHADER, VERTEX));
    gl.attachShader(program, shader(gl.FRAGMENT_SHADER, FRAGMENT));
    gl.linkProgram(program);
    if (!gl.getProgramParameter(program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(program));
  } catch (fault) { fallBack(); return; }
  gl.useProgram(program);
  gl.enable(gl.DEPTH_TEST);
  const uniform = (name) => gl.getUniformLocation(program, name);
  const places = { clip: uniform('clip'), times: uniform('times'), farthest: uniform('farthest'), lamp: uniform('lamp'),
    eye: uniform('eye'), coloured: uniform('coloured') };
  const fields = [['base', 'base', 3], ['ray', 'ray', 3], ['flatWay', 'flat', 3], ['slope', 'slope', 3], ['colour', 'colour', 3],
    ['e', 'e', 1], ['isCut', 'isCut', 1]];

  const upload = (mesh) => {
    const buffers = {};
    for (const [, key] of fields) {
      buffers[key] = gl.createBuffer();
      gl.bindBuffer(gl.ARRAY_BUFFER, buffers[key]);
      gl.bufferData(gl.ARRAY_BUFFER, mesh[key], gl.STATIC_DRAW);
    }
    buffers.faces = gl.createBuffer();
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, buffers.faces);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, mesh.faces, gl.STATIC_DRAW);
    return { buffers, count: mesh.faces.length };
  };
  const ready = new Map();
  const planMeshes = (k) => {
    if (!ready.has(k)) ready.set(k, book.plans[k].features.map((f) => upload(meshOf(f))));
    return ready.get(k);
  };

  const times4 = (a, b) => {
    const out = new Float32Array(16);
    for (let c = 0; c < 4; ++c)
      for (let r = 0; r < 4; ++r)
        for (let k = 0; k < 4; ++k) out[4 * c + r] += a[4 * k + r] * b[4 * c + k];
    return out;
  };

  const draw = () => {
    const scale = window.devicePixelRatio || 1;
    const width = Math.max(1, Math.round(canvas.clientWidth * scale)), height = Math.max(1, Math.round(canvas.clientHeight * scale));
    if (canvas.width !== width || canvas.height !== height) { canvas.width = width; canvas.height = height; }
    gl.viewport(0, 0, width, height);
    gl.clearColor(0.914, 0.902, 0.875, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    const turn = shown.turn * Math.PI / 180, tilt = shown.tilt * Math.PI / 180;
    const eye = [Math.cos(turn) * Math.cos(tilt), Math.sin(turn) * Math.cos(tilt), Math.sin(tilt)];
    const right = [-Math.sin(turn), Math.cos(turn), 0];
    const up = [eye[1] * right[2] - eye[2] * right[1], eye[2] * right[0] - eye[0] * right[2], eye[0] * right[1] - eye[1] * right[0]];
    // Flat parts seen from the side leave room above and below: what is seen of a disc is as tall as its tilt makes it.
    const aspect = width / height, room = Math.min(aspect, 1 / Math.max(0.65, Math.abs(Math.sin(tilt))));
    const far = 1.1 * book.radius_mm / (0.25 * room), open = 0.25 / shown.zoom;
    const near = Math.max(0.02 * far, far - 2 * book.radius_mm), end = far + 2 * book.radius_mm;
    const view = new Float32Array([right[0], up[0], eye[0], 0, right[1], up[1], eye[1], 0, right[2], up[2], eye[2], 0, 0, 0, -far, 1]);
    const lens = new Float32Array([1 / (open * aspect), 0, 0, 0, 0, 1 / open, 0, 0, 0, 0, -(end + near) / (end - near), -1,
      0, 0, -2 * end * near / (end - near), 0]);
    const a = turn + (shown.lamp - 90) * Math.PI / 180, low = 20 * Math.PI / 180;
    gl.uniformMatrix4fv(places.clip, false, times4(lens, view));
    gl.uniform1f(places.times, shown.times);
    gl.uniform1f(places.farthest, 0.25 * book.radius_mm);
    gl.uniform3f(places.lamp, Math.cos(a) * Math.cos(low), Math.sin(a) * Math.cos(low), Math.sin(low));
    gl.uniform3f(places.eye, eye[0], eye[1], eye[2]);
    gl.uniform1f(places.coloured, shown.colours ? 1 : 0);
    for (const part of planMeshes(shown.plan)) {
      for (const [name, key, size] of fields) {
        const place = gl.getAttribLocation(program, name);
        if (place < 0) continue;
        gl.bindBuffer(gl.ARRAY_BUFFER, part.buffers[key]);
        gl.enableVertexAttribArray(place);
        gl.vertexAttribPointer(place, size, gl.FLOAT, false, 0, 0);
      }
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, part.buffers.faces);
      gl.drawElements(gl.TRIANGLES, part.count, gl.UNSIGNED_SHORT, 0);
    }
  };
  let isAsked = false;
  const redraw = () => {
    if (isAsked) return;
    isAsked = true;
    requestAnimationFrame(() => { isAsked = false; draw(); });
  };

  const say = () => {
    field('times-said').textContent = shown.times < 1.05 ? 'true to size' : shown.times.toFixed(shown.times < 10 ? 1 : 0) + ' times';
    field('lamp-said').textContent = Math.round(shown.lamp) + ' degrees';
    field('turn-said').textContent = Math.round(shown.turn) + ' degrees';
    field('tilt-said').textContent = Math.round(shown.tilt) + ' degrees';
    field('turn').value = shown.turn;
    field('tilt').value = shown.tilt;
    redraw();
  };
  const moveBy = (turn, tilt) => {
    shown.turn = ((shown.turn + turn) % 360 + 360) % 360;
    shown.tilt = Math.max(-85, Math.min(85, shown.tilt + tilt));
    say();
  };
  const zoomBy = (factor) => { shown.zoom = Math.max(0.5, Math.min(40, shown.zoom * factor)); redraw(); };

  field('times').value = Math.log10(shown.times);
  field('lamp').value = shown.lamp;
  const listen = (name, act) => field(name).addEventListener('input', (event) => { act(Number(event.target.value)); say(); });
  listen('times', (v) => { shown.times = Math.pow(10, v); });
  listen('lamp', (v) => { shown.lamp = v; });
  listen('turn', (v) => { shown.turn = v; });
  listen('tilt', (v) => { shown.tilt = v; });
  document.querySelectorAll('input[name=turn-plan]').forEach((input) =>
    input.addEventListener('change', () => { shown.plan = Number(input.value); say(); }));
  document.querySelectorAll('input[name=turn-colour]').forEach((input) =>
    input.addEventListener('change', () => { shown.colours = input.value === 'residual'; say(); }));

  const fingers = new Map();
  const spread = () => {
    const [a, b] = [...fingers.values()];
    return Math.hypot(a.x - b.x, a.y - b.y);
  };
  canvas.addEventListener('pointerdown', (event) => {
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener('pointermove', (event) => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    const apart = fingers.size === 2 ? spread() : 0;
    const now = { x: event.clientX, y: event.clientY };
    fingers.set(event.pointerId, now);
    if (fingers.size === 2) { if (apart > 0) zoomBy(spread() / apart); return; }
    moveBy(-0.4 * (now.x - before.x), event.pointerType === 'touch' ? 0 : 0.3 * (now.y - before.y));
  });
  const lift = (event) => { fingers.delete(event.pointerId); };
  canvas.addEventListener('pointerup', lift);
  canvas.addEventListener('pointercancel', lift);
  canvas.addEventListener('wheel', (event) => {
    if (!event.ctrlKey && document.activeElement !== canvas) return;
    event.preventDefault();
    zoomBy(Math.exp(-0.0015 * event.deltaY));
  }, { passive: false });
  canvas.addEventListener('keydown', (event) => {
    const acts = { ArrowLeft: () => moveBy(5, 0), ArrowRight: () => moveBy(-5, 0), ArrowUp: () => moveBy(0, 4),
      ArrowDown: () => moveBy(0, -4), '+': () => zoomBy(1.15), '=': () => zoomBy(1.15), '-': () => zoomBy(1 / 1.15) };
    if (!acts[event.key]) return;
    event.preventDefault();
    acts[event.key]();
  });
  canvas.addEventListener('webglcontextlost', (event) => { event.preventDefault(); });
  canvas.addEventListener('webglcontextrestored', () => { location.reload(); });
  new ResizeObserver(redraw).observe(canvas);
  say();
  draw();
  stage.dataset.drawn = 'yes';
})();
