// An OpenGL context without a display, by EGL.
#include "asperity/render/offscreen.h"

#include <epoxy/egl.h>
#include <epoxy/gl.h>

#include <dlfcn.h>
#include <vector>

namespace asperity {

namespace {

constexpr const char *kRemedy = " On Debian 12: apt-get install libegl1 libgl1 libgl1-mesa-dri.";

/// epoxy ends the program when it finds no library, so they are looked for first.
bool is_there(const char *library) { return dlopen(library, RTLD_LAZY | RTLD_GLOBAL) != nullptr; }

EGLContext context_on(EGLDisplay display) {
  if (display == EGL_NO_DISPLAY || !eglInitialize(display, nullptr, nullptr) || !eglBindAPI(EGL_OPENGL_API))
    return EGL_NO_CONTEXT;
  const EGLint config_wish[] = {EGL_RENDERABLE_TYPE, EGL_OPENGL_BIT, EGL_SURFACE_TYPE, EGL_PBUFFER_BIT,
                                EGL_NONE};
  EGLConfig config = nullptr;
  EGLint count = 0;
  if (!eglChooseConfig(display, config_wish, &config, 1, &count) || count == 0)
    config = EGL_NO_CONFIG_KHR;
  const EGLint wish[] = {EGL_CONTEXT_MAJOR_VERSION,
                         3,
                         EGL_CONTEXT_MINOR_VERSION,
                         3,
                         EGL_CONTEXT_OPENGL_PROFILE_MASK,
                         EGL_CONTEXT_OPENGL_CORE_PROFILE_BIT,
                         EGL_NONE};
  const EGLContext context = eglCreateContext(display, config, EGL_NO_CONTEXT, wish);
  if (context == EGL_NO_CONTEXT || eglMakeCurrent(display, EGL_NO_SURFACE, EGL_NO_SURFACE, context))
    return context;
  eglDestroyContext(display, context);
  return EGL_NO_CONTEXT;
}

/// Graphics cards, best first; none where EGL cannot list them.
std::vector<EGLDisplay> cards() {
  std::vector<EGLDisplay> displays;
  if (!epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_EXT_platform_device") ||
      !epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_EXT_device_enumeration") ||
      !epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_EXT_device_query"))
    return displays;
  EGLDeviceEXT devices[16] = {};
  EGLint count = 0;
  if (!eglQueryDevicesEXT(16, devices, &count))
    return displays;
  for (EGLint k = 0; k < count; ++k) {
    const char *extensions = eglQueryDeviceStringEXT(devices[k], EGL_EXTENSIONS);
    const bool is_software =
        extensions && std::string(extensions).find("EGL_MESA_device_software") != std::string::npos;
    if (!is_software)
      displays.push_back(eglGetPlatformDisplayEXT(EGL_PLATFORM_DEVICE_EXT, devices[k], nullptr));
  }
  return displays;
}

} // namespace

std::unique_ptr<OffscreenContext> OffscreenContext::make(std::string &fault) {
  if (!is_there("libEGL.so.1") || !(is_there("libOpenGL.so.0") || is_there("libGL.so.1"))) {
    fault = std::string("The libraries that draw (EGL and OpenGL) are not installed.") + kRemedy;
    return nullptr;
  }
  std::vector<EGLDisplay> displays = cards();
  if (epoxy_has_egl_extension(EGL_NO_DISPLAY, "EGL_MESA_platform_surfaceless"))
    displays.push_back(eglGetPlatformDisplayEXT(EGL_PLATFORM_SURFACELESS_MESA, EGL_DEFAULT_DISPLAY, nullptr));
  for (EGLDisplay display : displays) {
    const EGLContext context = context_on(display);
    if (context == EGL_NO_CONTEXT)
      continue;
    std::unique_ptr<OffscreenContext> made(new OffscreenContext);
    made->display_ = display;
    made->context_ = context;
    if (const auto *name = reinterpret_cast<const char *>(glGetString(GL_RENDERER)))
      made->renderer_name_ = name;
    return made;
  }
  fault = std::string("No OpenGL 3.3 can be had without a display on this machine.") + kRemedy;
  return nullptr;
}

OffscreenContext::~OffscreenContext() {
  // The display stays open: it may be another's too, and the system closes it with the program.
  eglMakeCurrent(display_, EGL_NO_SURFACE, EGL_NO_SURFACE, EGL_NO_CONTEXT);
  eglDestroyContext(display_, context_);
}

} // namespace asperity
