// OpenGL names that delete themselves, and a check that nothing went wrong.
#pragma once

#include <epoxy/gl.h>

#include <cassert>
#include <utility>

namespace asperity {

template <typename Kind> class GlObject {
public:
  GlObject() : name_(Kind::make()) {}
  ~GlObject() {
    if (name_ != 0)
      Kind::drop(name_);
  }
  GlObject(GlObject &&other) noexcept : name_(std::exchange(other.name_, 0)) {}
  GlObject &operator=(GlObject &&other) noexcept {
    std::swap(name_, other.name_);
    return *this;
  }
  GLuint name() const { return name_; }

private:
  GLuint name_ = 0;
};

struct BufferKind {
  static GLuint make() {
    GLuint n = 0;
    glGenBuffers(1, &n);
    return n;
  }
  static void drop(GLuint n) { glDeleteBuffers(1, &n); }
};
struct VertexArrayKind {
  static GLuint make() {
    GLuint n = 0;
    glGenVertexArrays(1, &n);
    return n;
  }
  static void drop(GLuint n) { glDeleteVertexArrays(1, &n); }
};
struct TextureKind {
  static GLuint make() {
    GLuint n = 0;
    glGenTextures(1, &n);
    return n;
  }
  static void drop(GLuint n) { glDeleteTextures(1, &n); }
};
struct FramebufferKind {
  static GLuint make() {
    GLuint n = 0;
    glGenFramebuffers(1, &n);
    return n;
  }
  static void drop(GLuint n) { glDeleteFramebuffers(1, &n); }
};
struct RenderbufferKind {
  static GLuint make() {
    GLuint n = 0;
    glGenRenderbuffers(1, &n);
    return n;
  }
  static void drop(GLuint n) { glDeleteRenderbuffers(1, &n); }
};

using Buffer = GlObject<BufferKind>;
using VertexArray = GlObject<VertexArrayKind>;
using Texture = GlObject<TextureKind>;
using Framebuffer = GlObject<FramebufferKind>;
using Renderbuffer = GlObject<RenderbufferKind>;

/// A wrong call is our mistake: builds with assertions stop there.
inline void expect_no_gl_error() {
#ifndef NDEBUG
  assert(glGetError() == GL_NO_ERROR);
#endif
}

} // namespace asperity
