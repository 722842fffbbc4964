import {
  DepthTexture,
  Mesh,
  NoBlending,
  OrthographicCamera,
  PlaneGeometry,
  Scene,
  ShaderMaterial,
  UnsignedIntType,
  type WebGLRenderer,
  WebGLRenderTarget,
} from "three";

/**
 * The part of the picture that changes only with view, survey or look, kept as colour and depth. Moving the rod then costs one
 * screen-sized copy and not the whole cast, which matters where WebGL runs in software.
 */
export class StillLayer {
  private fine: WebGLRenderTarget | null = null;
  private quick: WebGLRenderTarget | null = null;
  private readonly material = new ShaderMaterial({
    uniforms: { colour: { value: null }, deep: { value: null } },
    vertexShader: /* glsl */ `varying vec2 at; void main() { at = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }`,
    fragmentShader: /* glsl */ `uniform sampler2D colour, deep; varying vec2 at;
      void main() { gl_FragColor = texture2D(colour, at); gl_FragDepth = texture2D(deep, at).r; }`,
    blending: NoBlending,
    depthFunc: 7, // AlwaysDepth
  });
  private readonly quad = new Mesh(new PlaneGeometry(2, 2), this.material);
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();

  constructor(private readonly renderer: WebGLRenderer) {
    this.quad.frustumCulled = false;
    this.scene.add(this.quad);
  }

  /** @param width, height of the picture [CSS px]; @param ratio device px per CSS px; a quick picture has one */
  resize(width: number, height: number, ratio: number, samples: number): void {
    this.free();
    const made = (k: number, smooth: number): WebGLRenderTarget => {
      const [w, h] = [Math.round(width * k), Math.round(height * k)];
      return new WebGLRenderTarget(w, h, { samples: smooth, depthTexture: new DepthTexture(w, h, UnsignedIntType) });
    };
    this.fine = made(ratio, samples);
    this.quick = made(Math.min(1, ratio), 0);
  }

  /** Draws it anew; `quick`: with hard edges, for a picture that will not stay. */
  draw(quick: boolean, render: () => void): void {
    const target = quick ? this.quick : this.fine;
    if (!target) return;
    this.renderer.setRenderTarget(target);
    render();
    this.renderer.setRenderTarget(null);
    this.material.uniforms["colour"]!.value = target.texture;
    this.material.uniforms["deep"]!.value = target.depthTexture;
  }

  copyToScreen(): void {
    this.renderer.render(this.scene, this.camera);
  }

  dispose(): void {
    this.free();
    this.quad.geometry.dispose();
    this.material.dispose();
  }

  private free(): void {
    for (const target of [this.fine, this.quick]) {
      target?.depthTexture?.dispose();
      target?.dispose();
    }
  }
}
