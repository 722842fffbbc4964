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
  private target: WebGLRenderTarget | null = null;
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

  resize(width: number, height: number, samples: number): void {
    this.target?.dispose();
    this.target?.depthTexture?.dispose();
    const depthTexture = new DepthTexture(width, height, UnsignedIntType);
    this.target = new WebGLRenderTarget(width, height, { samples, depthTexture });
    this.material.uniforms["colour"]!.value = this.target.texture;
    this.material.uniforms["deep"]!.value = depthTexture;
  }

  draw(render: () => void): void {
    this.renderer.setRenderTarget(this.target);
    render();
    this.renderer.setRenderTarget(null);
  }

  copyToScreen(): void {
    this.renderer.render(this.scene, this.camera);
  }

  dispose(): void {
    this.target?.dispose();
    this.target?.depthTexture?.dispose();
    this.quad.geometry.dispose();
    this.material.dispose();
  }
}
