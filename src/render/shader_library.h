// Shader programs made from the texts in shaders/, which are packed into the program.
#pragma once

#include "gl_object.h"

#include "asperity/base/vec.h"
#include "asperity/picture/image.h"

#include <glm/mat4x4.hpp>

#include <string>
#include <string_view>

namespace asperity {

/// A linked program; setting a uniform that the compiler dropped does nothing.
class ShaderProgram {
public:
  /// Files by name, e.g. "surface.vert". On failure `fault` is set (if it was empty) and nothing is drawn.
  ShaderProgram(const char *vertex, const char *fragment, std::string &fault);
  ~ShaderProgram();
  ShaderProgram(const ShaderProgram &) = delete;
  ShaderProgram &operator=(const ShaderProgram &) = delete;

  void use() const { glUseProgram(name_); }
  void set(const char *uniform, int value) const;
  void set(const char *uniform, bool value) const { set(uniform, value ? 1 : 0); }
  void set(const char *uniform, double value) const;
  void set(const char *uniform, Vec2 value) const;
  void set(const char *uniform, Vec3 value) const;
  void set(const char *uniform, const glm::dmat4 &value) const;
  void set(const char *uniform, Rgb colour) const;
  void set(const char *uniform, Rgb colour, double alpha) const;
  void set_unsigned(const char *uniform, std::size_t value) const;
  void set_unsigned(const char *uniform, std::size_t x, std::size_t y) const;

private:
  int place_of(const char *uniform) const { return glGetUniformLocation(name_, uniform); }
  GLuint name_ = 0;
};

/// The text of a shader with its includes filled in. The folder in the environment variable ASPERITY_SHADERS,
/// if set, goes before what is packed in, so that shaders can be tried without building.
std::string shader_text(std::string_view file, std::string &fault);

} // namespace asperity
